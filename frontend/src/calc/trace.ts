/**
 * Following lots over sheets: back to sources and forward to recipients.
 *
 * Lots are nodes and edges point the way goods went. A batch joins all its lots in to all its
 * lots out, and a topped-up bin is a lot that came from lots, so no clock is asked.
 */

import { itemsIn, objectIn, textIn } from "./bodies.ts";
import { TEXT_ORDER } from "./record.ts";
import { idIn, typeIn } from "./subjects.ts";

export type Direction = "back" | "forward";

type State = Readonly<Record<string, unknown>>;

/** Subject -> state, whatever its type; only what a trace needs is read of each. */
export interface Sheets {
  get(subject: string): object | undefined;
  keys(): Iterable<string>;
}

/** Of these a sheet is needed to go on; the others are ends. */
export const WALKED: readonly string[] = ["lot", "batch"];

/** A subject on the way, with a name where a held sheet gives one. */
export interface Node {
  readonly id: string;
  readonly label?: string;
}

export interface Edge {
  readonly from: string;
  readonly to: string;
  readonly amount: string;
  readonly unit: string | null;
}

/** What a walk found; `missing` names the sheets it could not go on without. */
export interface Trace {
  readonly lot: string;
  readonly direction: Direction;
  readonly nodes: readonly Node[];
  readonly edges: readonly Edge[];
  readonly is_complete: boolean;
  readonly missing: readonly string[];
}

/** Subjects reached, edges used, and sheets that were not there. */
export interface Walk {
  readonly reached: ReadonlySet<string>;
  readonly edges: readonly Edge[];
  readonly missing: readonly string[];
}

/** Everything a lot came from, or everywhere it went, over the sheets at hand. */
export function trace(lot: string, direction: Direction, sheets: Sheets): Trace {
  const walk = walkFrom(`lot:${lot}`, direction, sheets);
  return {
    lot,
    direction,
    nodes: [...walk.reached].sort(TEXT_ORDER).map((subject) => nodeOf(subject, sheets)),
    edges: walk.edges,
    is_complete: walk.missing.length === 0,
    missing: walk.missing,
  };
}

/** Breadth first; a subject is visited once, so that a recorded circle ends. */
export function walkFrom(start: string, direction: Direction, sheets: Sheets): Walk {
  const reached = new Set([start]);
  const edges: Edge[] = [];
  const missing: string[] = [];
  // Grows while it is walked.
  for (const subject of reached) {
    const state = stateOf(subject, sheets);
    if (state === null) {
      if (WALKED.includes(typeIn(subject))) missing.push(subject);
      continue;
    }
    for (const edge of edgesAt(subject, state, direction)) {
      edges.push(edge);
      reached.add(direction === "back" ? edge.from : edge.to);
    }
  }
  return { reached, edges: edges.sort(compareEdges), missing: missing.sort(TEXT_ORDER) };
}

/**
 * The edges one sheet knows in one direction, so that a caller may fetch sheets by level.
 * Between a lot and a batch the sheet that is walked from is asked.
 */
export function edgesAt(subject: string, state: State, direction: Direction): Edge[] {
  const type = typeIn(subject);
  if (type === "lot") {
    const unit = textIn(state, "unit");
    return direction === "back"
      ? itemsIn(state, "made_from").map((each) =>
          edgeOf({ from: textIn(each, "origin") ?? "", to: subject }, each, unit),
        )
      : itemsIn(state, "went_to").map((each) =>
          edgeOf({ from: subject, to: textIn(each, "to") ?? "" }, each, unit),
        );
  }
  if (type !== "batch") return [];
  return itemsIn(state, direction === "back" ? "lots_in" : "lots_out").map((each) => {
    const lot = `lot:${textIn(each, "lot") ?? ""}`;
    const ends = direction === "back" ? { from: lot, to: subject } : { from: subject, to: lot };
    return edgeOf(ends, each, textIn(each, "unit"));
  });
}

function edgeOf(
  ends: { readonly from: string; readonly to: string },
  each: State,
  unit: string | null,
): Edge {
  return { ...ends, amount: textIn(each, "amount") ?? "0", unit };
}

function compareEdges(a: Edge, b: Edge): number {
  return (
    TEXT_ORDER(a.from, b.from) || TEXT_ORDER(a.to, b.to) || TEXT_ORDER(a.unit ?? "", b.unit ?? "")
  );
}

function stateOf(subject: string, sheets: Sheets): State | null {
  const state = sheets.get(subject);
  return state === undefined ? null : objectIn({ state }, "state");
}

function nodeOf(subject: string, sheets: Sheets): Node {
  const label = labelOf(subject, sheets);
  return label === null ? { id: subject } : { id: subject, label };
}

/** What people call it: a batch's code, a lot's material, a partner's or place's name. */
function labelOf(subject: string, sheets: Sheets): string | null {
  const state = stateOf(subject, sheets) ?? {};
  switch (typeIn(subject)) {
    case "batch":
      return textIn(state, "code");
    case "lot":
      return nameOf(`material:${textIn(state, "material") ?? ""}`, sheets);
    case "day": {
      const [place, on] = dayParts(idIn(subject));
      const name = nameOf(`place:${place}`, sheets);
      return name === null ? null : `${name}, ${on}`;
    }
    default:
      return nameOf(subject, sheets);
  }
}

function dayParts(day: string): [string, string] {
  const colon = day.lastIndexOf(":");
  return [day.slice(0, Math.max(colon, 0)), day.slice(colon + 1)];
}

function nameOf(subject: string, sheets: Sheets): string | null {
  const fields = objectIn(stateOf(subject, sheets) ?? {}, "fields") ?? {};
  return textIn(fields, "name");
}
