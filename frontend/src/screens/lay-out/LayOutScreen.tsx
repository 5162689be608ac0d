/** Lay out: all of it on the bench before anything is mixed. */
import { useSignal } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { Tube } from "../../parts/Tube.tsx";
import { entriesHeld, record, takeBack } from "../../state/record.ts";
import { DESPITE } from "../../text/holds.ts";
import { LAY_OUT } from "../../text/lay_out.ts";
import { despitePart, lacksReason } from "../common/against.ts";
import { type BatchLine, batchOf, pathAfter, recipeNameOf } from "../common/batches.ts";
import { DespiteField } from "../common/Despite.tsx";
import { today } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { materialOf, quantityText } from "../common/lots.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { LineToLayOut } from "./LineToLayOut.tsx";
import { inLineUnit, proposalFor } from "./proposal.ts";
import "../common/rows.css";
import "./lay_out.css";

/** `#/lay-out/:batch`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = batchOf(params.batch ?? "")?.state ?? null;
  if (batch === null) {
    return (
      <Instead
        where={LAY_OUT.where}
        title={LAY_OUT.where}
        benchName={LAY_OUT.bench}
        back="#/"
        on={{ words: LAY_OUT.all_batches, href: "#/batches" }}
        says={LAY_OUT.not_here}
      />
    );
  }
  return <LayOut batch={batch} />;
}

/** A lot that something speaks against, the line it would be laid out for, and the reason. */
interface Why {
  line: BatchLine;
  lot: string;
  reason: string;
}

/** The decision, in the place of the keys. */
function WhyAllTheSame(props: {
  why: Why;
  onWhy: (why: Why | null) => void;
  onKeep: (why: Why) => void;
}) {
  const { why, onWhy, onKeep } = props;
  return (
    <>
      <DespiteField
        lots={[why.lot]}
        reason={why.reason}
        onReason={(reason) => onWhy({ ...why, reason })}
      />
      <Foot>
        <BackKey onPress={() => onWhy(null)} />
        <MainKey
          words={DESPITE.do(LAY_OUT.lay_out)}
          notReady={lacksReason([why.lot], why.reason) ? DESPITE.first : null}
          onNotReady={() => focusFirst("despite")}
          onPress={() => onKeep(why)}
        />
      </Foot>
    </>
  );
}

/** Takes the tick of a line back: its last laying out that stands. */
async function untick(batch: string, line: string): Promise<void> {
  const held = await entriesHeld(`batch:${batch}`);
  const voided = new Set(
    held.filter(({ entry }) => entry.kind === "void").map(({ entry }) => entry.body.corrects),
  );
  const ticks = held.filter(
    ({ entry }) => entry.kind === "laid_out" && entry.body.line === line && !voided.has(entry.id),
  );
  for (const { entry } of ticks) await takeBack(entry.id);
}

function LayOut({ batch }: { batch: BatchState }) {
  const found = useSignal<Hindrance | null>(null);
  const why = useSignal<Why | null>(null);
  const done = batch.lines.filter((line) => line.laid_out.length > 0).length;
  const open = batch.lines.find((line) => line.laid_out.length === 0);
  const all = batch.lines.length;

  async function tick(line: BatchLine, named?: string) {
    if (line.laid_out.length > 0) return untick(batch.batch, line.line);
    const { taken } = proposalFor(line, today());
    const lots =
      named === undefined
        ? taken.map((each) => ({ lot: each.lot.lot, amount: inLineUnit(each, line) }))
        : [{ lot: named }];
    const codes = lots.map(({ lot }) => lot);
    const reason = why.value?.reason ?? "";
    if (lacksReason(codes, reason)) {
      why.value = { line, lot: codes[0] ?? "", reason };
      return;
    }
    const despite = despitePart(codes, reason);
    found.value = hindrance(
      await record("laid_out", { batch: batch.batch, line: line.line, lots, ...despite }),
    );
    if (found.value !== null) return;
    why.value = null;
    tremble(1);
  }

  return (
    <Frame
      where={LAY_OUT.where}
      title={recipeNameOf(batch)}
      isRecorded
      aside={batch.makes && <b>{quantityText(batch.makes, materialOf(batch.product))}</b>}
      calm={batch.code}
      gauge={<HeadGauge />}
      benchName={LAY_OUT.bench}
      bench={
        why.value !== null ? (
          <WhyAllTheSame
            why={why.value}
            onWhy={(next) => {
              why.value = next;
            }}
            onKeep={({ line, lot }) => void tick(line, lot)}
          />
        ) : (
          <Foot>
            <BackKey href={`#/batch/${batch.batch}`} />
            <MainKey
              words={LAY_OUT.weigh_first}
              href={`#${pathAfter(batch.batch)}`}
              notReady={open === undefined ? null : LAY_OUT.still(all - done)}
              onNotReady={() => focusFirst(open?.line)}
            />
          </Foot>
        )
      }
    >
      <p class="lay-out-tube">
        <Tube full={done} whole={all} says={LAY_OUT.tube(String(done), String(all))} />
        <b>{LAY_OUT.done_of(String(done), String(all))}</b>
      </p>
      <Refusal sentence={found.value?.sentence ?? null} />
      <ul class="lay-out-lines" aria-label={LAY_OUT.lines}>
        {batch.lines.map((line) => (
          <LineToLayOut
            key={line.line}
            line={line}
            kitchen={batch.place}
            onTick={(lot) => void tick(line, lot)}
          />
        ))}
      </ul>
      <Caution about="shelf_life" />
    </Frame>
  );
}
