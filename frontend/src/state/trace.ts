/** Where a lot came from and where it went: over the sheets this phone holds, or as the server says. */
import { TEXT_ORDER } from "../calc/record.ts";
import {
  type Direction,
  type Edge,
  type Node,
  type Sheets,
  type Trace,
  trace,
} from "../calc/trace.ts";
import { ask, type Fields, isFields } from "../sync/answers.ts";
import { current, house } from "./house.ts";
import { sheet, sheetsOf } from "./sheets.ts";

const TYPES = ["lot", "batch", "day", "material", "place", "source", "recipient"];

/** The sheets of the person on the screen, as a walk reads them; reading them redraws a screen. */
const heldSheets: Sheets = {
  get: (subject) => sheet<object>(subject).value?.state,
  keys: () => TYPES.flatMap((type) => sheetsOf<object>(type).value.map((shown) => shown.subject)),
};

/** The whole way in one direction, over the sheets this phone holds; works without signal. */
export function heldTrace(lot: string, direction: Direction): Trace {
  return trace(lot, direction, heldSheets);
}

/** The same over everything the server has; a code where it did not answer. Needs signal. */
export async function askedTrace(
  lot: string,
  direction: Direction,
): Promise<{ trace: Trace } | { code: string }> {
  const device = current.value?.device ?? null;
  const path = `/api/v1/lots/${encodeURIComponent(lot)}/trace?direction=${direction}`;
  const outcome = await ask(house().world, { method: "GET", path, device, body: null });
  if (outcome.is !== "answered") return { code: outcome.code };
  const found = parsedTrace(outcome.payload, lot, direction);
  return found === null ? { code: "nonsense" } : { trace: found };
}

/** The answer, if every node and edge is one. */
function parsedTrace(payload: Fields, lot: string, direction: Direction): Trace | null {
  const { nodes, edges, missing, is_complete } = payload;
  if (!Array.isArray(nodes) || !Array.isArray(edges) || !Array.isArray(missing)) return null;
  const readNodes = nodes.map(parsedNode).filter((node) => node !== null);
  const readEdges = edges.map(parsedEdge).filter((edge) => edge !== null);
  if (readNodes.length !== nodes.length || readEdges.length !== edges.length) return null;
  return {
    lot,
    direction,
    nodes: readNodes.sort((a, b) => TEXT_ORDER(a.id, b.id)),
    edges: readEdges,
    is_complete: is_complete === true,
    missing: missing.filter((each): each is string => typeof each === "string"),
  };
}

function parsedNode(node: unknown): Node | null {
  if (!isFields(node) || typeof node.id !== "string") return null;
  return typeof node.label === "string" ? { id: node.id, label: node.label } : { id: node.id };
}

function parsedEdge(edge: unknown): Edge | null {
  if (!isFields(edge)) return null;
  const { from, to, amount, unit } = edge;
  if (typeof from !== "string" || typeof to !== "string" || typeof amount !== "string") return null;
  return { from, to, amount, unit: typeof unit === "string" ? unit : null };
}
