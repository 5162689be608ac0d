/** The whole way as a list: every link with its quantity, back and forward. */
import type { Edge, Trace } from "../../calc/trace.ts";
import { Facts, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { TRACE } from "../../text/trace.ts";
import { batchOf } from "../common/batches.ts";
import { endName } from "../common/ends.ts";
import { doubtOfBatch } from "../common/InQuestion.tsx";
import { amountText } from "../common/lots.ts";
import type { BothWays } from "./steps.ts";

/** Closed at first; the picture shows the nearest links. */
export function EveryStep({ ways }: { ways: BothWays }) {
  return (
    <details class="every-step">
      <summary class="cup">{TRACE.all_steps}</summary>
      <Way title={TRACE.back} way={ways.back} />
      <Way title={TRACE.forward} way={ways.forward} />
    </details>
  );
}

function Way({ title, way }: { title: string; way: Trace }) {
  if (way.edges.length === 0 && way.missing.length === 0) return null;
  return (
    <Part title={title}>
      <Facts
        rows={[
          ...way.edges.map((edge) => ({ name: said(edge, way), value: amountOf(edge) })),
          ...way.missing.map((each) => ({ name: endName(each), value: TRACE.not_known })),
        ]}
      />
    </Part>
  );
}

function amountOf(edge: Edge): string {
  return amountText(edge.amount, edge.unit ?? "pc");
}

function said(edge: Edge, way: Trace): string {
  return TRACE.way(nodeWords(edge.from, way), nodeWords(edge.to, way));
}

function nodeWords(subject: string, way: Trace): string {
  if (subject.startsWith("batch:")) {
    const state = batchOf(subject.slice("batch:".length))?.state;
    const name = nameOf("batch", subject.slice("batch:".length));
    if (state === undefined) return name;
    const doubt = doubtOfBatch(state);
    return doubt === null ? name : `${name} (${doubt})`;
  }
  const label = way.nodes.find((node) => node.id === subject)?.label;
  if (subject.startsWith("lot:")) return [label, endName(subject)].filter(Boolean).join(" ");
  return subject.startsWith("day:") ? endName(subject) : (label ?? endName(subject));
}
