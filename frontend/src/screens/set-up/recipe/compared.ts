/** Two versions side by side: every line and step, what differs in each and what stayed. */
import { itemsIn } from "../../../calc/bodies.ts";
import type { Fields } from "../changes.ts";
import { type Difference, differences } from "./differences.ts";
import { textOf } from "./typed.ts";

export type Changed = Extract<Difference, { change: "changed" }>;

/** One line or step; `changes` is empty where all is as before. */
export interface ComparedItem {
  of: "line" | "step";
  id: string;
  at: number;
  item: Fields;
  is: "added" | "removed" | "changed" | "same";
  changes: Changed[];
}

export interface Compared {
  recipe: Extract<Difference, { of: "recipe" }>[];
  lines: ComparedItem[];
  steps: ComparedItem[];
  /** Whether lines or steps that are in both stand in another order. */
  order: Extract<Difference, { of: "order_lines" | "order_steps" }>[];
}

/** In the order of the later version; what it no longer has comes last. */
export function compared(before: Fields, after: Fields): Compared {
  const found = differences(before, after);
  return {
    recipe: found.filter((each) => each.of === "recipe"),
    lines: itemsCompared("line", itemsIn(after, "lines"), found),
    steps: itemsCompared("step", itemsIn(after, "steps"), found),
    order: found.flatMap((each) =>
      each.of === "order_lines" || each.of === "order_steps" ? [each] : [],
    ),
  };
}

function itemsCompared(
  of: "line" | "step",
  now: readonly Fields[],
  found: readonly Difference[],
): ComparedItem[] {
  const about = found.flatMap((each) => (each.of === of && "item" in each ? [each] : []));
  const here = now.map((item, at): ComparedItem => {
    const id = textOf(item, of);
    const mine = about.filter((each) => textOf(each.item, of) === id);
    const changes = mine.filter((each) => each.change === "changed");
    const isAdded = mine.some(({ change }) => change === "added");
    return { of, id, at, item, changes, is: isAdded ? "added" : stateOf(changes) };
  });
  const gone = about
    .filter(({ change }) => change === "removed")
    .map(
      ({ item, at }): ComparedItem => ({
        of,
        id: textOf(item, of),
        at,
        item,
        changes: [],
        is: "removed",
      }),
    );
  return [...here, ...gone];
}

function stateOf(changes: readonly Changed[]): "changed" | "same" {
  return changes.length === 0 ? "same" : "changed";
}
