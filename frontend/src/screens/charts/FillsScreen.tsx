/** Fills as control charts: the packs of one lot, and every check of its product. */

import { POINTS_LEAST } from "../../calc/charts_of.ts";
import type { LotState } from "../../calc/stock.ts";
import { Caution } from "../../parts/Caution.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { sheet, sheetsOf } from "../../state/sheets.ts";
import { CHARTS, FILLS } from "../../text/charts.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { materialOf } from "../common/lots.ts";
import { ChartedSeries } from "./ChartedSeries.tsx";
import { fillSeries } from "./series.ts";
import "../common/rows.css";

/** `#/lot/:lot/chart`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const code = params.lot ?? "";
  const lot = sheet<LotState>(`lot:${code}`).value?.state ?? null;
  const lots = sheetsOf<LotState>("lot").value.map(({ state }) => state);
  const series = lot === null ? [] : fillSeries(lot, lots);
  return (
    <Frame
      where={FILLS.where(code)}
      title={materialOf(lot?.material ?? null)?.name ?? FILLS.title}
      isRecorded={lot !== null}
      gauge={<HeadGauge />}
      calm={FILLS.title}
      benchName={CHARTS.bench}
      bench={
        <Foot>
          <BackKey href={`#/lot/${code}`} />
          {lot?.unit === "pc" ? (
            <MainKey words={FILLS.weigh} href={`#/lot/${code}/fill`} />
          ) : (
            <MainKey words={FILLS.sheet} href={`#/lot/${code}`} />
          )}
        </Foot>
      }
    >
      {lot === null && <Notice>{FILLS.not_here}</Notice>}
      {lot !== null && series.length === 0 && <Notice>{FILLS.none(POINTS_LEAST)}</Notice>}
      <ChartedSeries of="fills" series={series} />
      {series.length > 0 && <Caution about="net_content" />}
    </Frame>
  );
}
