/** What is put to the readings of an instrument from its last check on, and why not where it is not. */
import type { InstrumentState } from "../../calc/instruments.ts";
import { Part } from "../../parts/Plain.tsx";
import { INSTRUMENTS } from "../../text/instruments.ts";
import { appliedWords, formulaWords, lineWords, rangeWords, spreadWords } from "./line_words.ts";

/** The row in force now; without one readings are taken as they are. */
export function Correction({ state }: { state: InstrumentState }) {
  const row = state.corrections?.at(-1);
  const line = row?.line ?? null;
  const found = state.checks?.find((each) => each.entry === row?.found_by);
  return (
    <Part title={INSTRUMENTS.correction}>
      {line === null ? (
        <p>{INSTRUMENTS.no_correction}</p>
      ) : (
        <>
          <p>
            <b>{appliedWords(line) ?? lineWords(line)}</b>
            {found === undefined ? "." : `, ${INSTRUMENTS.found_by(found.on)}.`}
          </p>
          {line.is_significant !== false && (
            <p class="second">
              {formulaWords(line)}
              <br />
              {rangeWords(line)}
            </p>
          )}
        </>
      )}
      {row?.repeatability && <p class="second">{spreadWords(row.repeatability, row.unit)}</p>}
    </Part>
  );
}
