/** The things beside the day's glass: past rows to be read, the rest cups. */
import { Cup } from "../../parts/Cup.tsx";
import type { DayThing } from "../../parts/DayGlass.tsx";
import { Tube } from "../../parts/Tube.tsx";
import { nameOf } from "../../state/stock.ts";
import { type UnderWay, underWay } from "../../state/today.ts";
import { clockWords, ordinal } from "../../text/numbers.ts";
import { TODAY } from "../../text/today.ts";
import { pathOfAct, recipeNameOf } from "../shared/batches.ts";
import { zone } from "../shared/edge.ts";
import { amountText, lifeShown, materialOf } from "../shared/lots.ts";
import { hourOf, lateLots, pastOf } from "./day.ts";

const STAGES = 4; // laid out, weighed in, cooked, packed

/** Everything on a thread today, from what is done to what has no hour. */
export function dayThings(today: string): DayThing[] {
  const [inHand, ...others] = underWay.value;
  const past = pastOf(today).map(
    (each): DayThing => ({
      id: each.id,
      hour: hourOf(each.at, zone()),
      shown: (
        <p class="past">
          <b>{clockWords(each.at, zone())}</b>
          <span>
            <span class="rec">{recipeNameOf(each.batch)}</span> {TODAY[each.what]}
          </span>
        </p>
      ),
    }),
  );
  const now: DayThing[] =
    inHand === undefined
      ? []
      : [{ id: inHand.batch, hour: null, isNow: true, shown: <InHand way={inHand} /> }];
  const waiting = others.map(
    (way): DayThing => ({ id: way.batch, hour: null, shown: <Waiting way={way} /> }),
  );
  return [...past, ...now, ...waiting, ...late(today)];
}

function late(today: string): DayThing[] {
  return lateLots(today).map((lot) => {
    const life = lifeShown(lot.life, lot.made_on, today);
    const amount = amountText(lot.amount, lot.unit, materialOf(lot.material));
    return {
      id: lot.lot,
      hour: null,
      shown: (
        <Cup class="to-do" href={`#/lot/${lot.lot}`}>
          <b>{life.state === "past" ? "" : TODAY.today}</b>
          <span>
            <span class="rec">{nameOf("material", lot.material)}</span>
            <span class="second">
              {life.state === "past" ? TODAY.past(amount) : TODAY.use_or_discard(amount)}
            </span>
          </span>
        </Cup>
      ),
    };
  });
}

/** How far a batch is, in stages and shares of one; for the tube only. */
function stageOf(way: UnderWay): number {
  const share = (done: number, all: number) => (all === 0 ? 1 : done / all);
  return (
    share(way.laid_out_count, way.lines_count) +
    share(way.weighed_count, way.lines_count) +
    share(way.steps_done_count, way.steps_count)
  );
}

function nextWords({ next, ...way }: UnderWay) {
  if (next.act === "weigh_in") {
    const name = nameOf("material", next.material ?? null).toLowerCase();
    const at = ordinal(way.weighed_count + 1);
    return (
      <>
        {TODAY.next}
        <span class="rec">{name}</span>
        {TODAY.of(at, String(way.lines_count))}
      </>
    );
  }
  if (next.act === "lay_out") {
    return TODAY.lay_out(String(way.laid_out_count), String(way.lines_count));
  }
  return next.act === "step" ? (next.says ?? TODAY.step) : `${TODAY.next}${TODAY.finish}`;
}

function InHand({ way }: { way: UnderWay }) {
  const stage = stageOf(way);
  return (
    <Cup class="in-hand" href={`#${pathOfAct(way.next)}`}>
      <span class="rec in-hand-name">{nameOf("recipe", way.recipe)}</span>
      <Tube
        full={stage}
        whole={STAGES}
        parts={STAGES}
        says={TODAY.way(String(Math.min(STAGES, Math.floor(stage) + 1)))}
      />
      <span>{nextWords(way)}</span>
    </Cup>
  );
}

function Waiting({ way }: { way: UnderWay }) {
  return (
    <Cup class="to-do" href={`#${pathOfAct(way.next)}`}>
      <b>{TODAY.open}</b>
      <span>
        <span class="rec">{nameOf("recipe", way.recipe)}</span>
        <span class="second">{nextWords(way)}</span>
      </span>
    </Cup>
  );
}
