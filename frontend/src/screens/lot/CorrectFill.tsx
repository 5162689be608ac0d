/** Corrects any number of a fill check. */
import { Caution } from "../../parts/Caution.tsx";
import { CorrectNumbers } from "../common/CorrectNumbers.tsx";
import { fillNumbers } from "./fill_numbers.ts";

/** `lot` is the code. */
export function CorrectFill({ lot, entry }: { lot: string; entry: string }) {
  return (
    <CorrectNumbers
      subject={`lot:${lot}`}
      entry={entry}
      title={lot}
      back={`/lot/${lot}`}
      numbersOf={fillNumbers}
      caution={<Caution about="net_content" />}
    />
  );
}
