/** The lines at the chosen size, each with what is at hand. */
import { textIn } from "../../calc/bodies.ts";
import { nameOf } from "../../state/stock.ts";
import type { Body } from "../../state/types.ts";
import { amountWords } from "../../text/numbers.ts";
import { SHARE } from "../../text/recipe_lines.ts";
import { START } from "../../text/start.ts";
import { amountText } from "../common/lots.ts";
import type { Scaled, ScaledLine } from "./scaling.ts";
import { type ScaleAtHand, tooCoarseFor } from "./too_coarse.ts";

interface ScaledLinesProps {
  scaled: Scaled;
  /** How far published figures of a household measure lie apart, in g. */
  ranges: ReadonlyMap<string, { low: string; high: string } | null>;
  /** Lines whose density nobody knows. */
  byVolume: ReadonlySet<string>;
  /** The scales of the kitchen it is made in. */
  scales: readonly ScaleAtHand[];
}

/** Read only: names, amounts, what is at hand; the one that limits is named. */
export function ScaledLines({ scaled, ranges, byVolume, scales }: ScaledLinesProps) {
  return (
    <ul class="scaled-lines">
      {scaled.lines.map((line) => (
        <li key={line.line}>
          <span class="rec">{nameOf("material", line.material)}</span>
          <b>{amountText(line.amount, line.unit)}</b>
          <span class="scaled-hand">
            <span class={line.is_short ? "shout" : "second"}>{handWords(line)}</span>
            {scaled.limits === line.line && <span class="second">{START.limits}</span>}
          </span>
          {line.other !== null && (
            <span class="second">
              {START[line.other.is](amountText(line.other.amount, line.unit))}
            </span>
          )}
          {textIn(line.body, "percent") !== null && (
            <span class="second">{shareWords(line.body)}</span>
          )}
          <TooCoarse line={line} scales={scales} />
          <Measure body={line.body} range={ranges.get(line.line) ?? null} />
          {byVolume.has(line.line) && <span class="second">{START.by_volume}</span>}
        </li>
      ))}
    </ul>
  );
}

/** Said where no scale at hand has twenty steps in so little. */
function TooCoarse({ line, scales }: { line: ScaledLine; scales: readonly ScaleAtHand[] }) {
  const coarse = tooCoarseFor(line, scales);
  if (coarse === null) return null;
  const step = amountWords(coarse.division, coarse.unit);
  return <span class="shout scaled-note">{START.too_coarse(coarse.name, step)}</span>;
}

/** How a household measure was written, and between which masses published figures lie. */
function Measure({ body, range }: { body: Body; range: { low: string; high: string } | null }) {
  const note = textIn(body, "note");
  if (note === null) return null;
  const words = range === null ? note : `${note}; ${START.as_published(range.low, range.high)}`;
  return <span class="second scaled-note">{words}</span>;
}

/** `20 % of the base`. */
function shareWords(body: Body): string {
  const of = textIn(body, "percent_of") ?? "whole";
  return SHARE.of[of]?.(amountWords(textIn(body, "percent"), "%")) ?? "";
}

function handWords(line: ScaledLine): string {
  if (line.at_hand === null) return START.not_known;
  const words = amountText(line.at_hand, line.unit);
  return line.is_short ? START.short(words) : START.at_hand(words);
}
