/** What a sum at the bench is: what it asks, what it answers, what its cautions are about. */
import type { Cited } from "../../calc/limits.ts";
import type { Basis } from "../../parts/NumberShown.tsx";
import type { SignName } from "../../parts/signs.ts";
import type { CautionAbout } from "../../text/cautions.ts";

/** What is typed and chosen, by key; a number as it was typed, "" while it is blank. */
export interface Typed {
  readonly [key: string]: string;
}

/** One of a few words. What is not chosen yet is the first. */
export interface ChoiceAsked {
  readonly is: "choice";
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly options: readonly { readonly value: string; readonly word: string }[];
}

/** A number; `unit_key` is where its unit is kept, of `units` the first while none is chosen. */
export interface NumberAsked {
  readonly is: "number";
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly unit_key?: string;
  readonly units: readonly string[];
  /** It is chosen, not measured: nothing is in doubt about it. */
  readonly is_wanted?: boolean;
  /** Read with whatever it stands in, so that no tare was taken off. */
  readonly is_gross?: boolean;
}

/** Yes or no; yes until somebody says "no". */
export interface TickAsked {
  readonly is: "tick";
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
}

export type OneAsked = ChoiceAsked | NumberAsked | TickAsked;

/** Several things about one name, which a person may have given. */
export interface GroupAsked {
  readonly is: "group";
  readonly label: string;
  readonly asked: readonly OneAsked[];
}

export type Asked = OneAsked | GroupAsked;

/** A result with its mark; `inputs` and `formula` open under it. */
export interface Row {
  readonly name: string;
  readonly amount: string | null;
  readonly unit: string | null;
  readonly basis: Basis;
  /** Before it was rounded, so that doubts can be carried through it; only of what is worked out. */
  readonly exact?: number;
  readonly uncertainty?: string | null;
  readonly coverage?: string;
  /** What each doubt makes of it. */
  readonly doubts?: readonly { readonly name: string; readonly value: string }[];
  readonly inputs?: readonly { readonly name: string; readonly value: string }[];
  readonly formula?: string;
  readonly source?: string;
}

/** A number that one watches on the way to another. */
export interface Watched {
  readonly says: string;
  readonly level: string | null;
  readonly target: string;
}

/** Something is still to be typed: where, and what to say on the key. */
export interface Missing {
  readonly is: "missing";
  readonly key: string;
  readonly sentence: string;
}

/** It cannot be done: one sentence, and what is known about why. */
export interface Refused {
  readonly is: "refused";
  readonly sentence: string;
  readonly rows: readonly Row[];
  readonly cited: readonly Cited[];
}

/** What to do, with the number to do it by; all other results below. */
export interface Found {
  readonly is: "found";
  readonly says: string;
  readonly main: Row | null;
  /** A verdict that is worth a plate: what lies inside limits, or what cannot be told. */
  readonly why?: string;
  readonly rows: readonly Row[];
  readonly cited: readonly Cited[];
  readonly watched?: Watched;
}

export type Answer = Missing | Refused | Found;

/** A line of the batch a sum was opened from, in kg; what is not known is null. */
export interface LineIn {
  readonly name: string;
  readonly amount: string | null;
  readonly solids_percent: string | null;
  readonly u: number;
}

/** A number as the record of a batch has it; typed over, it is somebody's own. */
export interface Weighed {
  readonly key: string;
  readonly amount: string;
  readonly u: number;
}

/** What a sum may know before anything is typed. */
export interface SumAbout {
  readonly lines: readonly LineIn[];
  readonly target_percent: string | null;
  readonly altitude_m: string | null;
}

/** One sum. `asked` may follow what is chosen; `begin` is what stands typed at first. */
export interface SumPlan {
  readonly title: string;
  readonly what: string;
  readonly sign: SignName;
  /** Every caution it may need. */
  readonly about: readonly CautionAbout[];
  /** Of these the ones that what is chosen needs; all where nobody says. */
  readonly aboutNow?: (typed: Typed) => readonly CautionAbout[];
  readonly begin: (about: SumAbout) => Typed;
  readonly asked: (typed: Typed, about: SumAbout) => readonly Asked[];
  readonly answer: (typed: Typed, about: SumAbout) => Answer;
  /** What a batch weighed, by the number it stands in, with its standard uncertainty. */
  readonly weighed?: (about: SumAbout) => readonly Weighed[];
}

/** Every single thing asked, groups opened. */
export function eachAsked(asked: readonly Asked[]): OneAsked[] {
  return asked.flatMap((each) => (each.is === "group" ? [...each.asked] : [each]));
}

/** The unit a number is typed in. */
export function unitOf(typed: Typed, asked: NumberAsked): string {
  const chosen = typed[asked.unit_key ?? ""] ?? "";
  return asked.units.includes(chosen) ? chosen : (asked.units[0] ?? "");
}

/** What is chosen, or the first of the options. */
export function chosen<Value extends string>(
  typed: Typed,
  key: string,
  options: readonly { readonly value: Value; readonly word: string }[],
): Value {
  const found = options.find((each) => each.value === typed[key]) ?? options[0];
  if (found === undefined) throw new Error(`nothing to choose for ${key}`);
  return found.value;
}
