/** What a glass is asked to show, read once for both ways of drawing it. */
import { figure } from "../text/numbers.ts";
import { drawn, type GlassWindow, glassWindow } from "./drawing.ts";

/** Decimal texts in one unit; `says` is the sentence for one who hears the screen. */
export interface GlassProps {
  says: string;
  /** What is in it now; null is an empty glass with a dashed target. */
  level: string | null;
  target?: string | null | undefined;
  low?: string | null | undefined;
  high?: string | null | undefined;
  /** The guard band: the whisker beside the reading. */
  uncertainty?: string | null | undefined;
  height?: number | undefined;
  /** Below and above this the glass does not go, if the caller knows better. */
  window?: GlassWindow | undefined;
}

/** Everything the drawing needs, as doubles and places. */
export interface GlassPlan {
  level: number | null;
  target: number | null;
  low: number | null;
  high: number | null;
  uncertainty: number | null;
  window: GlassWindow;
}

/** Reads the texts once for both ways of drawing. */
export function glassPlan(props: GlassProps): GlassPlan {
  const plan = {
    level: drawn(props.level),
    target: drawn(props.target),
    low: drawn(props.low),
    high: drawn(props.high),
    uncertainty: drawn(props.uncertainty),
  };
  return { ...plan, window: props.window ?? glassWindow(plan) };
}

/** A limit as it is written beside its mark: without the noise of a double. */
export function limitFigure(value: number): string {
  return figure(String(Number(value.toPrecision(6))));
}
