/** Which published figures a verdict leans on that nobody read in print, or that are disputed. */
import { RECALLED } from "../../text/recalled.ts";

/** A figure with its source and its basis, as sheets and results carry it. */
export interface CitedFigure {
  readonly what: string;
  readonly source: string;
  readonly basis: string;
}

/** The figures of a basis, each once, named: "check weights (OIML R 111)". */
export function citedBy(
  cited: readonly CitedFigure[],
  basis: string,
  names: Readonly<Record<string, unknown>>,
): string[] {
  const words = cited
    .filter((each) => each.basis === basis)
    .map((each) => `${names[each.what] ?? each.what} (${each.source})`);
  return [...new Set(words)];
}

/** Nothing where every figure was read. */
export function Recalled(props: {
  cited: readonly CitedFigure[];
  names: Readonly<Record<string, unknown>>;
}) {
  const recalled = citedBy(props.cited, "memory", props.names);
  const disputed = citedBy(props.cited, "disputed", props.names);
  return (
    <>
      {recalled.length > 0 && (
        <p class="second">
          <b>{RECALLED.recalled}</b> {recalled.join("; ")}.
        </p>
      )}
      {disputed.length > 0 && (
        <p class="second">
          <b>{RECALLED.disputed}</b> {disputed.join("; ")}.
        </p>
      )}
    </>
  );
}
