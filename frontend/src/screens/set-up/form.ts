/** One form for every definition: what was seen, what is typed, and the entry it becomes. */
import { type Signal, useSignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { textIn } from "../../calc/bodies.ts";
import { KINDS, type KindName } from "../../entries/kinds.ts";
import { sentence } from "../../entries/refusals.ts";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import type { Body, Json, Saved } from "../../state/types.ts";
import { fieldWords } from "../../text/refusals.ts";
import { FIELDS } from "../../text/set_up.ts";
import { type Typed, useDrafted } from "../common/drafted.ts";
import { newId } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { sameNameSays } from "../common/namesakes.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { useFound } from "../common/use_found.ts";
import { type ListedType, listOf } from "./areas.ts";
import { changesBetween, type Fields, jsonOf } from "./changes.ts";
import { tellKept } from "./kept.ts";
import { mayWrite } from "./who.ts";

/** What can be defined and edited by a form. */
export type DefinedType = ListedType | "cooperative";

/** How the keypad types into one number of a form. */
export interface NumberPlan {
  units?: (typed: Typed) => readonly string[];
  unitField?: string;
  isSigned?: boolean;
  isWhole?: boolean;
}

/** What one type of definition knows about its form. */
export interface FormPlan {
  type: DefinedType;
  /** Where one goes when it is kept. */
  back: string;
  /** A new one with sensible and remembered defaults. */
  blank: () => Typed;
  /** The form of fields in force. */
  typedOf: (fields: Fields) => Typed;
  /** Every field of the form as it goes into an entry; a missing one is left out. */
  bodyOf: (typed: Typed) => Body;
  /** The first thing without which it cannot be kept. */
  missing: (typed: Typed) => Hindrance | null;
  numbers: Readonly<Record<string, NumberPlan>>;
  /** Remembers what was chosen for the next one. */
  onKept?: (typed: Typed) => void;
}

/** What the fields of a form read and write. */
export interface Bound {
  typed: Typed;
  type: (part: Typed) => void;
  /** The number the keypad types into. */
  open: Signal<string | null>;
  numbers: Readonly<Record<string, NumberPlan>>;
  found: Hindrance | null;
  canWrite: boolean;
}

/** The form of a definition at work. */
export interface FormAtWork extends Bound {
  plan: FormPlan;
  id: string;
  isNew: boolean;
  /** How many fields differ from what was seen; null for a new one. */
  changed: number | null;
  save: () => Promise<void>;
  retire: (isRetired: boolean) => Promise<void>;
  rubOut: () => void;
}

interface Opened {
  [field: string]: Json;
  id: string;
  /** The fields in force when the form was opened: what a change comes from (R49). */
  seen: Json;
  form: { [field: string]: Json };
}

/** The text of a field as typed; "" while it is not answered. */
export function textAt(typed: Typed, name: string): string {
  const value = typed[name];
  return typeof value === "string" ? value : "";
}

/** The form of a definition; `inForce` is null for a new one. Its input is kept as a draft. */
export function useForm(plan: FormPlan, given: { id: string; inForce: Fields | null }): FormAtWork {
  const { id, inForce } = given;
  const blank = useMemo(() => openedOf(plan, id, inForce), [id]);
  const drafted = useDrafted<Opened>(`set-up/${plan.type}/${id}`, blank);
  const open = useSignal<string | null>(null);
  const found = useFound(drafted.typed);
  const isUntouched = drafted.typed.value === blank;
  // What nobody has typed into shows what is in force now, also after somebody else changed it.
  const opened =
    isUntouched && inForce !== null ? openedOf(plan, id, inForce) : drafted.typed.value;
  const typed = { ...blank.form, ...opened.form };
  const seen = isFields(opened.seen) ? opened.seen : null;
  const changes = seen === null ? null : changesBetween(seen, plan.bodyOf(typed), namesOf(plan));

  async function keep(kind: KindName, rest: Body, name: string) {
    const answer = await record(kind, { [plan.type]: opened.id, ...rest });
    found.value = hindranceOf(answer);
    if (!("saved" in answer)) return focusRefused(found.value);
    tremble(1);
    tellKept({ entry: answer.saved.id, name, isNew: seen === null, back: plan.back });
    drafted.clear();
    goTo(plan.back);
  }

  return {
    plan,
    id: opened.id,
    isNew: seen === null,
    typed,
    type: (part) => drafted.type({ form: { ...typed, ...part } }),
    open,
    numbers: plan.numbers,
    found: found.value,
    canWrite: mayWrite(`${plan.type}_defined`),
    changed: changes === null ? null : Object.keys(changes).length,
    async save() {
      const name = textAt(typed, "name");
      const taken = sameNameSays(listOf(plan.type), {
        id: opened.id,
        name,
        before: seen === null ? null : textIn(seen, "name"),
      });
      if (taken !== null) {
        found.value = { field: "name", sentence: taken };
        return focusFirst("name");
      }
      if (changes === null) await keep(`${plan.type}_defined`, plan.bodyOf(typed), name);
      else await keep(`${plan.type}_changed`, { changes: jsonOf(changes) }, name);
      plan.onKept?.(typed);
    },
    async retire(isRetired) {
      const changes = { is_retired: { from: jsonOf(inForce?.is_retired), to: isRetired } };
      await keep(`${plan.type}_changed`, { changes }, textAt(typed, "name"));
    },
    rubOut: drafted.clear,
  };
}

function openedOf(plan: FormPlan, id: string, inForce: Fields | null): Opened {
  if (inForce === null) {
    return { id: id === "new" ? newId() : id, seen: null, form: plan.blank() };
  }
  return { id, seen: jsonOf(inForce), form: { ...plan.blank(), ...plan.typedOf(inForce) } };
}

/** The fields of the form; retiring is an act of its own. */
function namesOf(plan: FormPlan): string[] {
  return KINDS[`${plan.type}_defined`].fields
    .map((field) => field.name)
    .filter((name) => name !== plan.type && name !== "is_retired");
}

function isFields(value: Json): value is { [field: string]: Json } {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Takes the person to the field that was refused. */
export function focusRefused(found: Hindrance | null): void {
  const [field] = found?.field.split(/\W/) ?? [];
  focusFirst(field === "life" ? "life_length" : field);
}

/** A refusal stands beside the field of the form, also where it is about one side of a change. */
export function hindranceOf(answer: Saved): Hindrance | null {
  if (!("refusal" in answer)) return hindrance(answer);
  const { refusal } = answer;
  const field = refusal.field.replace(/^changes\.(\w+)\.(from|to)/, "$1");
  return { field, sentence: sentence(refusal, FIELDS[field] ?? fieldWords(field)) };
}
