/** Keys to a chart, from the sheet of what is charted: only where there is something drawn. */
import type { BatchState } from "../../calc/batches.ts";
import type { LotState } from "../../calc/stock.ts";
import { Cup } from "../../parts/Cup.tsx";
import { sheet, sheetsOf } from "../../state/sheets.ts";
import { FILLS, YIELDS } from "../../text/charts.ts";
import { fillSeries, finishedOf, isDrawn, yieldSeries } from "./series.ts";

/** What a sheet says it is the sheet of: a lot with fills, or a recipe. */
export type ChartOf = { is: "fills"; lot: string } | { is: "yields"; recipe: string };

/** Nothing before there are enough points. */
export function ChartKey({ of }: { of: ChartOf }) {
  return of.is === "fills" ? <FillsKey lot={of.lot} /> : <YieldsKey recipe={of.recipe} />;
}

function FillsKey({ lot: code }: { lot: string }) {
  const lot = sheet<LotState>(`lot:${code}`).value?.state ?? null;
  const lots = sheetsOf<LotState>("lot").value.map(({ state }) => state);
  if (lot === null || !isDrawn(fillSeries(lot, lots))) return null;
  return <Key href={`#/lot/${code}/chart`} words={FILLS.key} />;
}

function YieldsKey({ recipe }: { recipe: string }) {
  const batches = sheetsOf<BatchState>("batch").value.map(({ state }) => state);
  if (!isDrawn(yieldSeries(finishedOf(recipe, batches)))) return null;
  return <Key href={`#/yields/${recipe}`} words={YIELDS.key} />;
}

function Key({ href, words }: { href: string; words: string }) {
  return (
    <p class="key-row">
      <Cup href={href}>{words}</Cup>
    </p>
  );
}
