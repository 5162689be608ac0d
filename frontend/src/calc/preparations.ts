/** Preparations: what was bought and what was left of it, from the sheets of batches. */

import { type Body, decimalIn, itemsIn, objectIn, textIn } from "./bodies.ts";
import type { Decimal } from "./numbers.ts";

/**
 * [edible, bought] in g of every batch that weighed this material in and again prepared.
 *
 * `batches` are batch sheets. A yield belongs to its state out: counted are batches of this recipe,
 * and of others those that prepare it as the same thing, in the same words. What went in as prepared
 * already, or was never weighed again, says nothing of a yield.
 */
export function preparationsOf(
  batches: readonly Body[],
  of: {
    readonly material: string;
    readonly recipe: string;
    readonly prepared_as: string | null;
  },
): [Decimal | null, Decimal | null][] {
  return batches.flatMap((batch) =>
    itemsIn(batch, "lines")
      .filter(
        (line) =>
          textIn(line, "material") === of.material &&
          isPreparedHere(line) &&
          (textIn(batch, "recipe") === of.recipe || isSameState(line, of.prepared_as)),
      )
      .map((line): [Decimal | null, Decimal | null] => [
        decimalIn(line, "prepared"),
        decimalIn(line, "in_base"),
      ]),
  );
}

function isPreparedHere(line: Body): boolean {
  return (
    textIn(line, "state") !== "prepared" &&
    textIn(line, "unit") === "g" &&
    decimalIn(line, "prepared") !== null
  );
}

function isSameState(line: Body, preparedAs: string | null): boolean {
  const said = textIn(objectIn(line, "yields") ?? {}, "prepared_as");
  return preparedAs !== null && said === preparedAs;
}
