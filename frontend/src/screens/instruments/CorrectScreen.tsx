/** Correct or void a check of an instrument. */
import { nameOf } from "../../state/stock.ts";
import { CorrectNumbers } from "../common/CorrectNumbers.tsx";
import { checkNumbers } from "./check_history.ts";

/** `#/instruments/:id/correct/:entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { id = "", entry = "" } = params;
  return (
    <CorrectNumbers
      subject={`instrument:${id}`}
      entry={entry}
      title={nameOf("instrument", id)}
      back={`/instruments/${id}`}
      numbersOf={checkNumbers}
      isDated
    />
  );
}
