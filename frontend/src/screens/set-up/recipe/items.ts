/** Lines, steps and sizes of pack as they are typed, and what each becomes in a version. */
import { itemsIn, objectIn, textIn } from "../../../calc/bodies.ts";
import { typedNumber } from "../../../parts/typing.ts";
import type { Body, Json } from "../../../state/types.ts";
import type { Fields } from "../changes.ts";
import { numberField, quantityField, quantityTyped, textsOf, wordsField } from "../typed.ts";

/**
 * A line as typed; below and above are in the unit it will be published in. `percent_of` "" means
 * that it is written as an amount; `is_base` is "yes" or "".
 */
export interface LineTyped {
  [field: string]: Json;
  line: string;
  material: string;
  amount: string;
  amount_unit: string;
  percent: string;
  percent_of: string;
  is_base: string;
  state: string;
  yield_percent: string;
  yield_by: string;
  yield_source: string;
  prepared_as: string;
  below: string;
  above: string;
  level: string;
  soluble_percent: string;
  note: string;
}

/** A step as typed; `measures` "" checks nothing. */
export interface StepTyped {
  [field: string]: Json;
  step: string;
  says: string;
  measures: string;
  line: string;
  minutes: string;
  unit: string;
  low: string;
  high: string;
  level: string;
  set_by: string;
  caution: string;
  /** The acid an acidity is reckoned as. */
  acid: string;
  /** Lines that count as salt or sugar, each with its percent: "3:100 5:62". */
  counted: string;
}

/** One size of pack; `packaging` is what it is filled into, "" for nothing that is counted. */
export interface PackTyped {
  [field: string]: Json;
  size: string;
  net: string;
  net_unit: string;
  word: string;
  packaging: string;
}

export const BLANK_LINE: LineTyped = {
  line: "",
  material: "",
  amount: "",
  amount_unit: "",
  percent: "",
  percent_of: "",
  is_base: "",
  state: "",
  yield_percent: "",
  yield_by: "",
  yield_source: "",
  prepared_as: "",
  below: "",
  above: "",
  level: "",
  soluble_percent: "",
  note: "",
};

export const BLANK_STEP: StepTyped = {
  step: "",
  says: "",
  measures: "",
  line: "",
  minutes: "",
  unit: "",
  low: "",
  high: "",
  level: "",
  set_by: "",
  caution: "",
  acid: "",
  counted: "",
};

export const BLANK_PACK: PackTyped = { size: "", net: "", net_unit: "g", word: "", packaging: "" };

const LINE_TEXTS = [
  "line",
  "material",
  "percent",
  "state",
  "below",
  "above",
  "level",
  "soluble_percent",
  "note",
];

/** A published line as the beginning of the next one. */
export function lineTyped(line: Fields): LineTyped {
  const yields = objectIn(line, "yields") ?? {};
  const isShare = typeof line.percent === "string";
  return {
    ...BLANK_LINE,
    ...textsOf(line, LINE_TEXTS),
    // A share's amount follows from the others, so it is not kept as if somebody had typed it.
    ...(isShare ? { amount: "", amount_unit: "g" } : quantityTyped(line, "amount", "g")),
    percent_of: isShare ? (textIn(line, "percent_of") ?? "whole") : "",
    is_base: line.is_base === true ? "yes" : "",
    yield_percent: textIn(yields, "percent") ?? "",
    yield_by: textIn(yields, "by") ?? "",
    yield_source: textIn(yields, "source") ?? "",
    prepared_as: textIn(yields, "prepared_as") ?? "",
  };
}

/** A published step as the beginning of the next one. */
export function stepTyped(step: Fields): StepTyped {
  return {
    ...BLANK_STEP,
    ...textsOf(step, Object.keys(BLANK_STEP)),
    counted: itemsIn(step, "counts")
      .map((each) => `${textIn(each, "line")}:${textIn(each, "percent")}`)
      .join(" "),
  };
}

/** A published size of pack as the beginning of the next one. */
export function packTyped(pack: Fields): PackTyped {
  return {
    ...BLANK_PACK,
    ...textsOf(pack, ["size", "word", "packaging"]),
    ...quantityTyped(pack, "net", "g"),
  };
}

/** A line's amount as it will be published, and the words about where it comes from. */
export interface PublishedAmount {
  amount: string;
  unit: string;
  note: string | null;
}

export function lineBody(line: LineTyped, published: PublishedAmount | undefined): Body {
  const notes = [line.note.trim(), published?.note ?? ""].filter((words) => words !== "");
  return {
    line: line.line,
    material: line.material,
    amount: { amount: published?.amount ?? "", unit: published?.unit ?? line.amount_unit },
    ...(line.percent_of === ""
      ? {}
      : { ...numberField(line, "percent"), percent_of: line.percent_of }),
    ...(line.is_base === "" ? {} : { is_base: true }),
    ...wordsField(line, "state"),
    ...yieldsField(line),
    ...numberField(line, "below"),
    ...numberField(line, "above"),
    ...numberField(line, "level"),
    ...numberField(line, "soluble_percent"),
    ...(notes.length === 0 ? {} : { note: notes.join(" ") }),
  };
}

/** A yield is published with its figure; without one there is nothing to say of it. */
function yieldsField(line: LineTyped): Body {
  const { percent } = numberField({ percent: line.yield_percent }, "percent");
  if (percent === undefined) return {};
  const words = { source: line.yield_source, prepared_as: line.prepared_as };
  return {
    yields: {
      percent,
      by: line.yield_by === "" ? "typed" : line.yield_by,
      ...wordsField(words, "source"),
      ...wordsField(words, "prepared_as"),
    },
  };
}

/** Limits belong to a check; without one they are not published. */
export function stepBody(step: StepTyped): Body {
  const isChecked = step.measures !== "";
  return {
    step: step.step,
    says: step.says.trim(),
    ...(isChecked
      ? {
          measures: step.measures,
          ...wordsField(step, "line"),
          ...wordsField(step, "unit"),
          ...numberField(step, "low"),
          ...numberField(step, "high"),
          ...numberField(step, "level"),
          ...wordsField(step, "set_by"),
          ...(step.measures === "acidity" ? wordsField(step, "acid") : {}),
          ...countsField(step),
        }
      : {}),
    ...numberField(step, "minutes"),
    ...wordsField(step, "caution"),
  };
}

function countsField(step: StepTyped): Body {
  const isWeighed = step.measures === "salt_weighed" || step.measures === "sugar_weighed";
  if (!isWeighed || step.counted === "") return {};
  return {
    counts: step.counted.split(" ").map((each) => {
      const [line = "", percent = ""] = each.split(":");
      return { line, percent };
    }),
  };
}

/** The counted lines with one more or fewer: sugar by its soluble solids, salt as a whole. */
export function toggledCount(step: StepTyped, line: LineTyped): string {
  const all = step.counted.split(" ").filter(Boolean);
  const others = all.filter((each) => each.split(":")[0] !== line.line);
  if (others.length < all.length) return others.join(" ");
  const solids = step.measures === "sugar_weighed" ? typedNumber(line.soluble_percent) : null;
  return [...others, `${line.line}:${solids ?? "100"}`].join(" ");
}

export function packBody(pack: PackTyped): Body {
  return {
    size: pack.size,
    ...quantityField(pack, "net"),
    ...wordsField(pack, "word"),
    ...wordsField(pack, "packaging"),
  };
}
