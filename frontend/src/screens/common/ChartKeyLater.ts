/** The key to a chart, fetched beside a sheet. */
import { later } from "./later.tsx";

export const ChartKeyLater = later(async () => (await import("../charts/ChartKeys.tsx")).ChartKey);
