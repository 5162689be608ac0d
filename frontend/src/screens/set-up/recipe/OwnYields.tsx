/** Yields this kitchen measured itself, offered in place of those in use; somebody takes them. */
import type { BatchState } from "../../../calc/batches.ts";
import { Cup } from "../../../parts/Cup.tsx";
import { Notice } from "../../../parts/Plain.tsx";
import { sheetsOf } from "../../../state/sheets.ts";
import { nameOf } from "../../../state/stock.ts";
import { amountWords } from "../../../text/numbers.ts";
import { YIELD } from "../../../text/recipe_lines.ts";
import type { LineTyped } from "./items.ts";
import { type Proposed, proposedFor, takenYield } from "./own_yields.ts";
import type { RecipeAtWork } from "./use_recipe.ts";

/** One notice a line; nothing while no line has enough preparations that say otherwise. */
export function OwnYields(props: {
  recipe: RecipeAtWork;
  lines: readonly LineTyped[];
  canWrite: boolean;
}) {
  const { recipe, lines, canWrite } = props;
  const batches = sheetsOf<BatchState>("batch").value.map(({ state }) => ({ ...state }));
  const take = (line: LineTyped, proposed: Proposed) =>
    recipe.type({
      lines: recipe.typed.lines.map((each) =>
        each.line === line.line
          ? Object.assign({}, each, takenYield(proposed, YIELD.own_source(rangeOf(proposed))))
          : each,
      ),
    });
  return (
    <>
      {lines.map((line) => {
        const proposed = proposedFor(line, { recipe: recipe.typed.recipe, batches });
        if (proposed === null) return null;
        const percent = amountWords(proposed.percent, "%");
        return (
          <Notice key={line.line}>
            <b class="rec">{nameOf("material", line.material)}</b>:{" "}
            {YIELD.measured(percent, rangeOf(proposed))} {inUseWords(line)}{" "}
            {canWrite && <Cup onPress={() => take(line, proposed)}>{YIELD.take_own(percent)}</Cup>}
          </Notice>
        );
      })}
    </>
  );
}

function rangeOf(proposed: Proposed) {
  return {
    count: proposed.counted,
    lowest: amountWords(proposed.lowest, "%"),
    highest: amountWords(proposed.highest, "%"),
  };
}

function inUseWords(line: LineTyped): string {
  if (line.yield_percent === "") return YIELD.in_use.none;
  const percent = amountWords(line.yield_percent, "%");
  const says = line.yield_by === "table" || line.yield_by === "own" ? line.yield_by : "typed";
  return YIELD.in_use[says](percent);
}
