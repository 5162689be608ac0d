/** The packs of a fill check under way, charted as they are weighed. */
import { missingPoints } from "../../calc/charts_of.ts";
import type { Fill } from "../../calc/fills.ts";
import { ChartedSeries } from "./ChartedSeries.tsx";
import { packSeries } from "./series.ts";

/** Nothing before there are enough of them. */
export function PacksSoFar({ fill }: { fill: Fill }) {
  const series = packSeries(fill);
  if (series === null || missingPoints(series.points.length) > 0) return null;
  return <ChartedSeries of="fills" series={[series]} />;
}
