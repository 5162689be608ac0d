/** What comes of a sum: the plate that says what to do, and every result with what it rests on. */
import { NumberShown } from "../../parts/NumberShown.tsx";
import { Facts } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { amountWords } from "../../text/numbers.ts";
import { DOUBT, SUMS } from "../../text/sums.ts";
import type { Answer, Row } from "./plan.ts";
import { offWords } from "./use_sum.ts";

/** Whole above the bench: the number to work by, or why it is refused; the main key says what lacks. */
export function AnswerPlate({ answer, isNoted }: { answer: Answer; isNoted: boolean }) {
  if (answer.is === "missing") return null;
  if (answer.is === "refused") {
    return <Verdict verdict="outside" word={SUMS.refused} why={answer.sentence} isLive />;
  }
  const { says, main, why } = answer;
  return (
    <div class="sum-answer" role="status">
      <p>{says}</p>
      {main !== null && (
        <p class="sum-main">
          <NumberShown amount={main.amount} unit={main.unit} basis={main.basis} size="net" />
        </p>
      )}
      {main !== null && offWords(main) !== null && <p class="second">{offWords(main)}</p>}
      {(isNoted || why) && <p class="second">{isNoted ? SUMS.noted : why}</p>}
    </div>
  );
}

/** A tap opens what a number rests on. */
export function ResultRows({ rows }: { rows: readonly Row[] }) {
  return <Facts rows={rows.map((row) => ({ name: row.name, value: <Result row={row} /> }))} />;
}

function Result({ row }: { row: Row }) {
  const { amount, unit, basis, uncertainty, coverage, formula, source } = row;
  const inputs = [...(row.inputs ?? []), ...(row.doubts ?? [])];
  return (
    <NumberShown
      amount={amount}
      unit={unit}
      basis={basis}
      budget={{
        value: amountWords(amount, unit),
        uncertainty,
        coverage,
        inputs,
        formula,
        source: source ?? (coverage === undefined ? null : DOUBT.source),
      }}
    />
  );
}
