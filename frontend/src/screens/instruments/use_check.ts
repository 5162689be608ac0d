/** All a guided check knows and does: its pages, what is typed, going on, going back, saving. */
import type { Signal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { Body } from "../../calc/bodies.ts";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { remember, remembered } from "../../state/settings.ts";
import { type Defined, places } from "../../state/stock.ts";
import type { Json } from "../../state/types.ts";
import { type InstrumentShown, instrumentsInUse } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { instantAt } from "../common/moments.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { useFound } from "../common/use_found.ts";
import { badKnown } from "./bad_numbers.ts";
import {
  altitudeOf,
  boilingAt,
  type CheckTyped,
  type Told,
  toldBy,
  waterScale,
} from "./check_body.ts";
import { depthsOf, hasReferences, isVessel, type Reference, type Stage, stagesOf } from "./plan.ts";

/** One screen of a check. */
export type Page =
  | { is: "which" | "known" | "water" | "altitude" | "result" }
  | { is: "stage"; stage: Stage };

/** A check at work. */
export interface Checking {
  instrument: InstrumentShown;
  fields: Body;
  typed: CheckTyped;
  type: (part: Partial<CheckTyped>) => void;
  pages: readonly Page[];
  page: Page;
  /** Known masses, buffers or values this person has used before, and the new ones. */
  remembered: readonly Reference[];
  scales: readonly InstrumentShown[];
  scale: InstrumentShown | null;
  told: () => Told;
  /** Keeps one reading of a step, and goes on when that was the last. */
  keep: (stage: Stage, reading: string) => void;
  goOn: () => void;
  goBack: () => void;
  hindrance: Signal<Hindrance | null>;
  save: () => Promise<void>;
}

/** The check of one instrument; its draft survives reload, crash and update. */
export function useCheck(instrument: InstrumentShown, defined: Defined): Checking {
  const { fields } = defined;
  const place = places.value.find((each) => each.id === instrument.place)?.fields ?? {};
  const blank = useMemo(() => blankFor(instrument, altitudeOf(place)), [instrument.id]);
  const { typed: kept, type, clear } = useDrafted<CheckTyped>(`check:${instrument.id}`, blank);
  const found = useFound(kept);
  const typed = kept.value;
  const scales = instrumentsInUse(instrument.place).filter((each) => each.sort === "scale");
  const scale = scales.find((each) => each.id === typed.scale) ?? waterScale(scales, fields);
  const pages = pagesOf(instrument.sort, typed, isBoilingKnownAt(altitudeOf(place)));
  const at = Math.min(typed.at, pages.length - 1);
  const told = () => toldBy(typed, { instrument, fields, scale });

  function keep(stage: Stage, reading: string) {
    // A quick hand keeps a reading before the screen is drawn again.
    const { read, typing } = kept.value;
    const before = read[stage.key] ?? [];
    const isFull = before.length >= stage.reads;
    const isFixed = stage.reads === 1 || stage.where.length > 0; // of the others more is better
    const readings = [...(isFull && isFixed ? before.slice(0, -1) : before), reading];
    const next = readings.length >= stage.reads && !(isFull && !isFixed) ? at + 1 : at;
    type({
      read: { ...read, [stage.key]: readings },
      typing: { ...typing, [stage.key]: "" },
      at: next,
    });
  }

  async function save() {
    const { body, result } = told();
    const happened_at = momentOf(typed);
    const options = happened_at === null ? {} : { happened_at };
    const answer = await record("instrument_checked", body, options);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    tremble(result.verdict === "failed" ? 2 : 1);
    const known = [...typed.known, ...knownBefore(instrument)];
    remember(knownKey(instrument), once(known));
    clear();
    const sheet = `/instruments/${instrument.id}`;
    goTo(result.verdict === "failed" ? `${sheet}/leaned/${answer.saved.id}` : sheet);
  }

  return {
    instrument,
    fields,
    typed,
    type,
    pages,
    page: pages[at] ?? { is: "result" },
    remembered: once([...knownBefore(instrument), ...typed.known]),
    scales,
    scale,
    told,
    keep,
    goOn: () => type({ at: at + 1, open: "" }),
    goBack: () => type({ at: Math.max(0, at - 1), open: "" }),
    hindrance: found,
    save,
  };
}

function blankFor(instrument: InstrumentShown, altitude: string | null): CheckTyped {
  return {
    at: 0,
    depth: depthsOf(instrument.sort).at(-1) ?? "full",
    known: knownBefore(instrument),
    read: {},
    typing: {},
    open: "",
    celsius: "",
    altitude: altitude ?? "",
    scale: "",
    value: "",
    accuracy_class: instrument.sort === "scale" ? "M1" : "",
    tolerance: "",
    line: "auto",
    is_adjusted: false,
    day: "",
    clock: "",
  };
}

/** A place above every printed row is asked for like one whose height nobody wrote. */
function isBoilingKnownAt(altitude: string | null): boolean {
  return altitude !== null && boilingAt(altitude) !== null;
}

function pagesOf(sort: string, typed: CheckTyped, isAltitudeKnown: boolean): Page[] {
  const { depth, known } = typed;
  const stages = stagesOf(sort, depth, known).map((stage): Page => ({ is: "stage", stage }));
  const asksAltitude = sort === "thermometer" && depth === "full" && !isAltitudeKnown;
  return [
    ...(depthsOf(sort).length > 1 ? [{ is: "which" as const }] : []),
    ...(hasReferences(sort) ? [{ is: "known" as const }] : []),
    ...(isVessel(sort) ? [{ is: "water" as const }] : []),
    ...(asksAltitude ? [{ is: "altitude" as const }] : []),
    ...stages,
    { is: "result" },
  ];
}

/** The moment on the wall that was written, as an instant; null for now. */
function momentOf({ day, clock }: CheckTyped): string | null {
  return day === "" ? null : instantAt({ day, clock });
}

function knownKey(instrument: InstrumentShown): string {
  return `check.known.${instrument.sort}.${instrument.unit}`;
}

/** What was used in the last checks of such an instrument; at first what every kitchen can get. */
function knownBefore(instrument: InstrumentShown): Reference[] {
  const kept = remembered(knownKey(instrument));
  const read = Array.isArray(kept) ? kept.map(referenceIn).filter((each) => each !== null) : [];
  const meant = read.filter(({ value }) => badKnown(value, { instrument, fields: {} }) === null);
  return meant.length > 0 ? meant : (AT_FIRST[instrument.sort] ?? []);
}

// Buffers as their bottles give them for 25 degC; water shows 0 on a refractometer
// and on a salometer.
const WATER: Reference = { value: "0", accuracy_class: "", tolerance: "0" };
const AT_FIRST: Record<string, Reference[]> = {
  ph_meter: ["4.01", "7.00"].map((value) => ({ value, accuracy_class: "", tolerance: "0.02" })),
  refractometer: [WATER],
  salometer: [WATER],
};

function referenceIn(kept: Json): Reference | null {
  if (typeof kept !== "object" || kept === null || Array.isArray(kept)) return null;
  const { value, accuracy_class, tolerance } = kept;
  if (typeof value !== "string" || typeof accuracy_class !== "string") return null;
  return { value, accuracy_class, tolerance: typeof tolerance === "string" ? tolerance : "" };
}

/** Each value once, the first one counts. */
function once(references: readonly Reference[]): Reference[] {
  return [
    ...new Map([...references].reverse().map((each) => [Number(each.value), each])).values(),
  ].reverse();
}
