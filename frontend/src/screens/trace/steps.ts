/** From a trace to what a screen draws: the steps beside one lot, and the recipients behind it. */

import { parseDecimal, plain, total } from "../../calc/numbers.ts";
import type { LotState } from "../../calc/stock.ts";
import { idIn, typeIn } from "../../calc/subjects.ts";
import type { Edge, Trace } from "../../calc/trace.ts";
import type { TraceStep } from "../../parts/TracePicture.tsx";
import { sheet } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { dayWords } from "../../text/numbers.ts";
import { TRACE } from "../../text/trace.ts";
import type { ToCall } from "../common/Business.tsx";
import { endName, placeOfDay } from "../common/ends.ts";
import { amountText, materialOf } from "../common/lots.ts";

/** Both directions of one lot. */
export interface BothWays {
  back: Trace;
  forward: Trace;
}

/** The sheet of a lot, if this phone has it. */
export function lotSheet(code: string): LotState | null {
  return sheet<LotState>(`lot:${code}`).value?.state ?? null;
}

/** The steps above the lot: what came into it, batches looked through to what went into them. */
export function stepsFrom(lot: string, { back }: BothWays): TraceStep[] {
  const direct = back.edges.filter((edge) => edge.to === `lot:${lot}`);
  const steps = direct.flatMap((edge) =>
    edge.from.startsWith("batch:")
      ? back.edges.filter((each) => each.to === edge.from).map((each) => stepOf(each, "from", back))
      : [stepOf(edge, "from", back)],
  );
  return steps.sort((a, b) => (a.on < b.on ? -1 : 1));
}

/** The steps below: batches by what came out of them, businesses, stall days; then what is left. */
export function stepsTo(lot: string, { forward }: BothWays): TraceStep[] {
  const steps = forward.edges
    .filter((edge) => edge.from === `lot:${lot}`)
    .map((edge) => stepOf(edge, "to", forward))
    .sort((a, b) => (a.on < b.on ? -1 : 1));
  return [...steps, ...remains(lot)];
}

function stepOf(edge: Edge, side: "from" | "to", way: Trace): TraceStep & { on: string } {
  const subject = side === "from" ? edge.from : edge.to;
  const type = typeIn(subject);
  const state = type === "lot" ? lotSheet(idIn(subject)) : null;
  const on = onOf(edge, side, state);
  return {
    id: targetOf(subject, way),
    name: nameFor(subject, type, state, way),
    sub: subOf(type, state),
    code: type === "lot" ? idIn(subject) : type === "batch" ? nameOf("batch", idIn(subject)) : "",
    amount: amountText(edge.amount, edge.unit ?? "pc", materialOf(state?.material ?? null)),
    weight: edge.amount,
    when: on === "" ? "" : dayWords(on),
    on,
    isUnknown: type === "lot" && state === null && way.missing.includes(subject),
  };
}

/** A batch is only passed through: pressing it leads to the lot that came out of it. */
function targetOf(subject: string, way: Trace): string {
  if (!subject.startsWith("batch:")) return subject;
  return way.edges.find((edge) => edge.from === subject)?.to ?? subject;
}

function nameFor(subject: string, type: string, state: LotState | null, way: Trace): string {
  if (type === "batch") {
    const out = targetOf(subject, way);
    const made = out.startsWith("lot:") ? lotSheet(idIn(out)) : null;
    return materialOf(made?.material ?? null)?.name ?? labelIn(way, out) ?? TRACE.batch;
  }
  if (type === "lot")
    return materialOf(state?.material ?? null)?.name ?? labelIn(way, subject) ?? "";
  // The day stands at the left wall already.
  if (type === "day") return placeOfDay(subject);
  return labelIn(way, subject) ?? endName(subject);
}

function labelIn(way: Trace, subject: string): string | null {
  return way.nodes.find((node) => node.id === subject)?.label ?? null;
}

function subOf(type: string, state: LotState | null): string {
  if (type === "recipient") return TRACE.business;
  if (type === "day") return TRACE.private;
  if (type === "source") return TRACE.source;
  if (type === "batch") return TRACE.batch;
  if (state?.made_by === "output") return TRACE.made_here;
  if (state?.made_by === "topped_up") return TRACE.poured_here;
  return state?.source === null || state === null ? "" : nameOf("source", state.source);
}

/** The day at the left wall: when it was made, or when it went. */
function onOf(edge: Edge, side: "from" | "to", state: LotState | null): string {
  if (side === "from" && state !== null) return state.made_on ?? "";
  const giver = edge.from.startsWith("lot:") ? lotSheet(idIn(edge.from)) : null;
  const taker = edge.to.startsWith("lot:") ? lotSheet(idIn(edge.to)) : null;
  if (side === "from") return taker?.made_on ?? "";
  return giver?.went_to.find((way) => way.to === edge.to)?.on ?? "";
}

function remains(lot: string): TraceStep[] {
  const state = lotSheet(lot);
  if (state === null) return [];
  const words = (amount: string) =>
    amountText(amount, state.unit ?? "pc", materialOf(state.material));
  const rest = (id: string, name: string, amount: string, sub: string): TraceStep[] =>
    amount === "0"
      ? []
      : [{ id, name, sub, amount: words(amount), weight: amount, when: TRACE.now, isStill: true }];
  const places = Object.keys(state.places).map((place) => nameOf("place", place));
  return [
    ...rest("lost", TRACE.lost, state.lost, ""),
    ...rest("still", TRACE.still, state.on_hand, places.join(", ")),
  ];
}

/** The sum of steps if they are all of one unit, else null. */
export function sumOf(edges: readonly Edge[]): string | null {
  const units = new Set(edges.map((edge) => edge.unit));
  const [unit] = units;
  if (units.size !== 1 || typeof unit !== "string") return null;
  return amountText(plain(total(edges.map((edge) => parseDecimal(edge.amount)))), unit);
}

/** Only a walk with no link missing can say that no business got any. */
export function isNobodyToCall(ways: BothWays): boolean {
  return ways.forward.is_complete && toCall(ways).length === 0;
}

/** Every business that any of the lot, or of what was made with it, went to. */
export function toCall({ forward }: BothWays): ToCall[] {
  const businesses = new Map<string, ToCall>();
  for (const edge of forward.edges) {
    if (!edge.to.startsWith("recipient:")) continue;
    const known = businesses.get(edge.to) ?? {
      recipient: idIn(edge.to),
      name: labelIn(forward, edge.to) ?? endName(edge.to),
      got: [],
    };
    const lot = idIn(edge.from);
    const material = materialOf(lotSheet(lot)?.material ?? null);
    known.got.push({ lot, amount: amountText(edge.amount, edge.unit ?? "pc", material) });
    businesses.set(edge.to, known);
  }
  return [...businesses.values()].sort((a, b) => a.name.localeCompare(b.name, "en"));
}

/** Stall days at which some of it was sold: nobody there can be called. */
export function soldPrivately({
  forward,
}: BothWays): { id: string; name: string; amount: string }[] {
  return forward.edges
    .filter((edge) => edge.to.startsWith("day:"))
    .map((edge) => ({
      id: `${edge.from} ${edge.to}`,
      name: endName(edge.to),
      amount: amountText(
        edge.amount,
        edge.unit ?? "pc",
        materialOf(lotSheet(idIn(edge.from))?.material ?? null),
      ),
    }));
}

/** The earliest day among the lots a trace reached: how far back this phone knows. */
export function earliestDay({ back }: BothWays): string | null {
  const days = back.nodes
    .filter((node) => node.id.startsWith("lot:"))
    .flatMap((node) => lotSheet(idIn(node.id))?.made_on ?? []);
  return days.sort()[0] ?? null;
}
