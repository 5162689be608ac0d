/** What differs between two versions of a recipe. */
import { itemsIn } from "../../../calc/bodies.ts";
import { type Fields, isSame } from "../changes.ts";
import { textOf } from "./typed.ts";

/** One difference; a missing value is undefined. */
export type Difference =
  | { of: "recipe"; field: string; from: unknown; to: unknown }
  | { of: "line" | "step"; item: Fields; at: number; change: "added" | "removed" }
  | {
      of: "line" | "step";
      item: Fields;
      at: number;
      change: "changed";
      field: string;
      from: unknown;
      to: unknown;
    }
  | { of: "order_lines" | "order_steps" };

const FIELDS = [
  "name",
  "product",
  "makes",
  "packs",
  "target_solids_percent",
  "loss_percent",
  "pack_sizes",
  "life",
  "does_not_scale",
  "note",
];
const LINE_FIELDS = [
  "material",
  "amount",
  "percent",
  "percent_of",
  "is_base",
  "state",
  "yields",
  "below",
  "above",
  "level",
  "soluble_percent",
  "note",
];
const STEP_FIELDS = [
  "says",
  "measures",
  "acid",
  "counts",
  "line",
  "minutes",
  "unit",
  "low",
  "high",
  "level",
  "set_by",
  "caution",
];

/** In the order of the page: the recipe, its lines, its steps. Lines and steps are alike by their id. */
export function differences(before: Fields, after: Fields): Difference[] {
  return [
    ...fieldsThatDiffer(before, after, FIELDS).map(
      (each): Difference => ({ of: "recipe", ...each }),
    ),
    ...itemsThatDiffer(before, after, { of: "line", list: "lines", fields: LINE_FIELDS }),
    ...itemsThatDiffer(before, after, { of: "step", list: "steps", fields: STEP_FIELDS }),
  ];
}

function fieldsThatDiffer(before: Fields, after: Fields, names: readonly string[]) {
  return names
    .filter((name) => !isSame(before[name], after[name]))
    .map((field) => ({ field, from: before[field], to: after[field] }));
}

interface Listed {
  of: "line" | "step";
  list: "lines" | "steps";
  fields: readonly string[];
}

function itemsThatDiffer(before: Fields, after: Fields, listed: Listed): Difference[] {
  const { of, list, fields } = listed;
  const old = itemsIn(before, list);
  const now = itemsIn(after, list);
  const inOld = (item: Fields) => old.find((each) => textOf(each, of) === textOf(item, of));
  const inNow = (item: Fields) => now.find((each) => textOf(each, of) === textOf(item, of));
  const removed = old.flatMap((item, at): Difference[] =>
    inNow(item) === undefined ? [{ of, item, at, change: "removed" }] : [],
  );
  const rest = now.flatMap((item, at): Difference[] => {
    const was = inOld(item);
    if (was === undefined) return [{ of, item, at, change: "added" }];
    return fieldsThatDiffer(was, item, fields).map(
      (each): Difference => ({ of, item, at, change: "changed", ...each }),
    );
  });
  const kept = now.filter((item) => inOld(item) !== undefined).map((item) => textOf(item, of));
  const were = old.filter((item) => inNow(item) !== undefined).map((item) => textOf(item, of));
  return [...removed, ...rest, ...(isSame(kept, were) ? [] : [orderOf(of)])];
}

function orderOf(of: "line" | "step"): Difference {
  return { of: of === "line" ? "order_lines" : "order_steps" };
}
