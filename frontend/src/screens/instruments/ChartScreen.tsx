/** Control charts of an instrument's checks: what it usually does at each known mass or value. */
import { POINTS_LEAST } from "../../calc/charts_of.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { CHARTS, CHECK_CHARTS } from "../../text/charts.ts";
import { INSTRUMENTS } from "../../text/instruments.ts";
import { ChartedSeries } from "../charts/ChartedSeries.tsx";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { instrumentSheet } from "../common/instruments.ts";
import { checkSeries } from "./check_series.ts";
import "../common/rows.css";
import "./instruments.css";

/** `#/instruments/:id/chart`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.id ?? "";
  const state = instrumentSheet(id);
  const series = checkSeries(state?.checks ?? []);
  return (
    <Frame
      where={CHECK_CHARTS.where}
      title={state === null ? INSTRUMENTS.title : nameOf("instrument", id)}
      isRecorded={state !== null}
      gauge={<HeadGauge />}
      benchName={CHARTS.bench}
      bench={
        <Foot>
          <BackKey href={`#/instruments/${id}`} />
          <MainKey words={INSTRUMENTS.check} href={`#/instruments/${id}/check`} />
        </Foot>
      }
    >
      {state === null && <Notice>{INSTRUMENTS.not_here}</Notice>}
      {state !== null && series.length === 0 && <Notice>{CHECK_CHARTS.none(POINTS_LEAST)}</Notice>}
      <ChartedSeries of="checks" series={series} />
    </Frame>
  );
}
