/** One sentence where a reading's instrument failed: said on every screen that shows the reading. */
import type { Trust } from "../../calc/trusted.ts";
import { nameOf } from "../../state/stock.ts";
import { FITNESS } from "../../text/fitness.ts";
import { signedWords } from "../../text/numbers.ts";
import { checkNamed, movesText } from "./trust.ts";

/** Nothing for a reading nobody doubts. A sheet of an earlier version knows no trust. */
export function InQuestion(props: {
  trust: Trust | undefined;
  instrument: string | null;
  unit: string | null;
}) {
  const { trust, instrument, unit } = props;
  if (!trust?.failed_by) return trust?.is_extrapolated ? <span>{FITNESS.beyond}</span> : null;
  const on = checkNamed(instrument, trust.failed_by)?.on ?? null;
  return (
    <span class="in-question">
      {FITNESS.failed_on(nameOf("instrument", instrument), on)}
      {trust.moves !== null && ` ${FITNESS.would_move(signedWords(movesText(trust.moves), unit))}`}
    </span>
  );
}
