/** How far an instrument may be off, who says so, and how well that is known. */
import type { InstrumentState } from "../../calc/instruments.ts";
import { Facts, Part } from "../../parts/Plain.tsx";
import { BASIS, CITED, INSTRUMENTS } from "../../text/instruments.ts";
import { amountWords } from "../../text/numbers.ts";
import { referenceShown } from "./said.ts";

/** The limits the last check was judged by; nothing before the first. */
export function Limits({ state }: { state: InstrumentState }) {
  const last = state.checks?.at(-1);
  const limits = new Map(
    last?.points.flatMap(({ reference, limit }) => (limit === null ? [] : [[reference, limit]])),
  );
  if (last === undefined || limits.size === 0) return null;
  return (
    <Part title={INSTRUMENTS.limits}>
      <Facts
        rows={[...limits].map(([reference, limit]) => ({
          name: amountWords(referenceShown(reference, last.unit), last.unit),
          value: `\u00b1\u00a0${amountWords(limit, last.unit)}`,
        }))}
      />
      <ul class="cited">
        {last.cited.map(({ what, source, basis, note }) => (
          <li key={`${what} ${source} ${note}`} class="second">
            {CITED[what] ?? what}: {source}
            {", "}
            <b class={basis === "memory" ? "shout" : ""}>{BASIS[basis] ?? basis}</b>
            {note && `. ${note}`}
          </li>
        ))}
      </ul>
    </Part>
  );
}
