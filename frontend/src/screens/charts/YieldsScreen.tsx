/** The yields of one recipe over its finished batches. */
import type { BatchState } from "../../calc/batches.ts";
import { POINTS_LEAST } from "../../calc/charts_of.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { isStillLoading, sheetsOf } from "../../state/sheets.ts";
import { recipes } from "../../state/stock.ts";
import { CHARTS, YIELDS } from "../../text/charts.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { ChartedSeries } from "./ChartedSeries.tsx";
import { finishedOf, yieldSeries } from "./series.ts";
import "../common/rows.css";

/** `#/yields/:recipe`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const recipe = recipes.value.find(({ id }) => id === params.recipe) ?? null;
  const batches = sheetsOf<BatchState>("batch").value.map(({ state }) => state);
  const series = yieldSeries(finishedOf(params.recipe ?? "", batches));
  const isKnown = recipe !== null || series.length > 0;
  return (
    <Frame
      where={YIELDS.where}
      title={recipe?.name ?? YIELDS.where}
      isRecorded={recipe !== null}
      gauge={<HeadGauge />}
      calm={YIELDS.from_phone}
      benchName={CHARTS.bench}
      bench={
        <Foot>
          <BackKey href="#/batches" />
          <MainKey words={YIELDS.batches} href="#/batches" />
        </Foot>
      }
    >
      {!isKnown && !isStillLoading.value && <Notice>{YIELDS.not_here}</Notice>}
      {isKnown && series.length === 0 && <Notice>{YIELDS.none(POINTS_LEAST)}</Notice>}
      <ChartedSeries of="yields" series={series} />
    </Frame>
  );
}
