/** The things beside the day's glass: past rows to be read, the rest cups. */

import type { LotState } from "../../calc/stock.ts";
import { Cup } from "../../parts/Cup.tsx";
import type { DayThing } from "../../parts/DayGlass.tsx";
import { Tube } from "../../parts/Tube.tsx";
import { attention } from "../../state/outbox.ts";
import { current } from "../../state/session.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { type UnderWay, underWay } from "../../state/today.ts";
import { clockWords, ordinal } from "../../text/numbers.ts";
import { TODAY } from "../../text/today.ts";
import { pathOfAct, pathOfLeaned, recipeNameOf } from "../common/batches.ts";
import { zone } from "../common/edge.ts";
import { amountText, lifeShown, materialOf } from "../common/lots.ts";
import { hourOf, lateLots, pastOf } from "./day.ts";
import { belowZero, failedFor, filledShort, toDecide, toLookAt } from "./day_around.ts";

const STAGES = 4; // laid out, weighed in, cooked, packed

/** Everything on a thread today, from what is done to what has no hour. */
export function dayThings(today: string): DayThing[] {
  const [inHand, ...others] = underWay.value;
  const past = pastOf(today).map(
    (each): DayThing => ({
      id: each.id,
      hour: hourOf(each.at, zone()),
      shown: (
        <p class="day-past">
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
  return [...past, ...now, ...waiting, ...looks(), ...late(today)];
}

/** What is open somewhere, as one cup each: kept aside, below zero, findings of batches. */
function looks(): DayThing[] {
  const aside = attention.value.length;
  const below = belowZero().length;
  const held = isCoordinator() ? toDecide() : [];
  const [first, ...more] = toLookAt();
  const count = first === undefined ? 0 : more.length + 1;
  const all: [number, Look][] = [
    [
      held.length,
      {
        id: "held",
        href: held[0] ?? "#/stock",
        words: TODAY.to_decide(held.length),
        why: TODAY.to_decide_why,
      },
    ],
    [aside, { id: "aside", href: "#/outbox", words: TODAY.aside(aside), why: TODAY.aside_why }],
    [
      below,
      { id: "below", href: "#/stock", words: TODAY.below_zero(below), why: TODAY.below_zero_why },
    ],
    [
      count,
      {
        id: "look",
        href: first !== undefined && count === 1 ? `#/batch/${first.batch}` : "#/batches",
        words: TODAY.to_look_at(count),
        why: TODAY.look_why,
      },
    ],
  ];
  const [short, ...shorter] = filledShort(
    sheetsOf<LotState>("lot").value.map(({ state }) => state),
  );
  if (short !== undefined) {
    const href = shorter.length === 0 ? `#/lot/${short.lot}` : "#/stock";
    const words = TODAY.filled_short(shorter.length + 1);
    all.push([1, { id: "short", href, words, why: TODAY.filled_short_why }]);
  }
  const leaning = toLookAt().filter((batch) => failedFor(batch).length > 0);
  if (isCoordinator() && leaning.length > 0) {
    const [check, ...others] = new Set(leaning.flatMap(failedFor));
    all.push([
      leaning.length,
      {
        id: "failed",
        href: others.length === 0 ? `#${pathOfLeaned(check)}` : "#/instruments",
        words: TODAY.failed(leaning.length),
        why: TODAY.failed_why,
      },
    ]);
  }
  return all.flatMap(([number, look]) =>
    number === 0 ? [] : [{ id: look.id, hour: null, shown: <LookAt {...look} /> }],
  );
}

function isCoordinator(): boolean {
  return current.value?.member.roles.includes("coordinator") ?? false;
}

interface Look {
  id: string;
  href: string;
  words: string;
  why: string;
}

function LookAt({ href, words, why }: Look) {
  return (
    <Cup class="to-do" href={href}>
      <b>{TODAY.look}</b>
      <span>
        <b>{words}</b>
        <span class="second">{why}</span>
      </span>
    </Cup>
  );
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
