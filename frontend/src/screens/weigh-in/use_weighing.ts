/** All a weigh-in screen knows and does: what is typed, what it means, saving it. */
import type { Signal } from "@preact/signals";
import { inBaseUnit } from "../../calc/bodies.ts";
import { type Decimal, difference, parseDecimal, ZERO } from "../../calc/numbers.ts";
import { weighed as weighedIn } from "../../calc/weighing.ts";
import { record, takeBack } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { remember, remembered } from "../../state/settings.ts";
import { againstUse, lotsOf } from "../../state/stock.ts";
import type { Body } from "../../state/types.ts";
import { despitePart } from "../common/against.ts";
import type { BatchLine, InstrumentShown } from "../common/batches.ts";
import { instrumentsInUse, pathAfter } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { nowMs, today } from "../common/edge.ts";
import { standingOf } from "../common/instruments.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { trusted } from "../common/trust.ts";
import { useFound } from "../common/use_found.ts";
import { measured, type Weighed, type WeighTyped, weighed } from "./reading.ts";
import { canTell, instrumentsFor, proposedFor } from "./which_instrument.ts";

/** The line that is weighed and its batch. */
export interface WeighPlace {
  batch: string;
  place: string | null;
  line: BatchLine;
}

/** The state of one weigh-in screen. */
export interface Weighing {
  typed: WeighTyped;
  type: (part: Partial<WeighTyped>) => void;
  isCounted: boolean;
  instruments: InstrumentShown[];
  instrument: InstrumentShown | null;
  /** One that could tell on this line, if the one in use cannot. */
  better: InstrumentShown | null;
  lot: string | null;
  /** Where the lot is taken from, if that is not the kitchen of the batch. */
  from: string | null;
  body: Body | null;
  /** The reading or the count alone, before a lot is chosen. */
  measured: Body | null;
  weighed: Weighed | null;
  hindrance: Signal<Hindrance | null>;
  save: () => Promise<void>;
  undo: (entry: string) => Promise<void>;
}

const BLANK: WeighTyped = {
  shown: "",
  tare: "",
  repeats: [],
  unit: "",
  instrument: "",
  lot: "",
  despite: "",
  into: "shown",
};

/** The lot to take from: the chosen one, else the first laid out that is not empty. */
function lotToTake(line: BatchLine, chosen: string): string | null {
  if (chosen !== "") return chosen;
  const on = today();
  const all = line.material === null ? [] : lotsOf(line.material);
  const free = all.filter((each) => againstUse(each.lot, on).length === 0);
  // What was laid out all the same comes before anything that nobody laid out.
  const stocked = line.laid_out.some((code) => all.some((each) => each.lot === code)) ? all : free;
  const laidOut = line.laid_out.find((code) => stocked.some((each) => each.lot === code));
  return laidOut ?? line.laid_out[0] ?? stocked[0]?.lot ?? null;
}

function chosenInstrument(typed: WeighTyped, line: BatchLine, all: InstrumentShown[]) {
  const last = remembered(`instrument:${line.planned?.unit ?? ""}`);
  const lastOne = all.find((each) => each.id === last);
  return (
    all.find((each) => each.id === typed.instrument) ??
    (lastOne?.is_here && canTell(lastOne, line) && !hasFailed(lastOne.id) ? lastOne : undefined) ??
    proposedFor(line, all, stateOf) ??
    all[0] ??
    null
  );
}

function stateOf(id: string): string {
  return standingOf(id).is;
}

function hasFailed(id: string): boolean {
  return stateOf(id) === "failed";
}

/** The one to propose, at hand or elsewhere, if it is another than the one in use. */
function betterThan(
  instrument: InstrumentShown | null,
  line: BatchLine,
  all: InstrumentShown[],
): InstrumentShown | null {
  const others = all.filter((each) => each.id !== instrument?.id);
  return proposedFor(line, others, stateOf) ?? others.find((each) => canTell(each, line)) ?? null;
}

function bowlOf(instrument: InstrumentShown | null): string {
  if (instrument === null) return "";
  const last = remembered(`bowl:${instrument.id}`);
  return typeof last === "string" ? last : (instrument.bowl_tare ?? "");
}

/** The form with what goes without saying filled in: the unit of the instrument, its bowl. */
function completed(
  typed: WeighTyped,
  line: BatchLine,
  instrument: InstrumentShown | null,
): WeighTyped {
  const planned = line.planned?.unit ?? "g";
  const own = planned === "pc" ? "pc" : (instrument?.unit ?? planned);
  const tare = typed.tare || (planned === "pc" ? "" : bowlOf(instrument));
  return { ...typed, unit: typed.unit || own, tare: tare === "0" ? "" : tare };
}

/** What was measured, or is planned while nothing is, in base units. */
function neededOf({ planned }: BatchLine, measurement: Body | null): Decimal {
  const amount =
    measurement !== null
      ? weighedIn(measurement)
      : planned && inBaseUnit(parseDecimal(planned.amount), planned.unit);
  return amount?.value ?? ZERO;
}

/**
 * Where a lot is taken from: this kitchen if enough stands here, else where enough does stand;
 * where it is enough nowhere, here if anything stands here. Amounts in base units.
 */
export function takenFrom(
  standing: Readonly<Record<string, string>>,
  kitchen: string | null,
  needed: Decimal,
): string | null {
  const isEnough = (place: string) => parseDecimal(standing[place] ?? "0").compare(needed) >= 0;
  const all = Object.keys(standing);
  if (kitchen !== null && kitchen in standing && isEnough(kitchen)) return kitchen;
  const other = all.find(isEnough);
  if (other !== undefined) return other;
  return kitchen !== null && kitchen in standing ? kitchen : (all[0] ?? kitchen);
}

/** One screen's weighing. Typed digits survive reload and leave with the entry that was saved. */
export function useWeighing({ batch, place, line }: WeighPlace): Weighing {
  const { typed, type, clear } = useDrafted<WeighTyped>(`weigh_in:${batch}:${line.line}`, BLANK);
  const found = useFound(typed);
  const isCounted = line.planned?.unit === "pc";
  const instruments = isCounted ? [] : instrumentsFor(line, instrumentsInUse(place));
  const instrument = chosenInstrument(typed.value, line, instruments);
  const now = completed(typed.value, line, instrument);
  const measurement = measured(now, instrument, isCounted);
  const lot = lotToTake(line, now.lot);
  const standing = lotsOf(line.material ?? "").find((each) => each.lot === lot)?.places ?? {};
  const from = takenFrom(standing, place, neededOf(line, measurement));
  const isWhole = measurement !== null && lot !== null && from !== null;
  const despite = lot === null ? {} : despitePart([lot], now.despite);
  const about = { batch, line: line.line, material: line.material, lot, place: from };
  const body = isWhole ? { ...about, ...measurement, ...despite } : null;
  const means = meaning(line, measurement, {
    unit: now.unit,
    tare: now.tare === "" ? null : now.tare,
    division: isCounted ? "1" : (instrument?.division ?? null),
    instrument: instrument?.id ?? null,
  });

  async function save() {
    if (body === null) return;
    const answer = await record("weigh_in", body);
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(means?.verdict === "outside" ? 2 : 1);
    if (instrument !== null) {
      remember(`instrument:${line.planned?.unit ?? ""}`, instrument.id);
      remember(`bowl:${instrument.id}`, now.tare === "" ? "0" : now.tare);
    }
    clear();
    if (!isToBeAddedTo(line, means, lot)) goTo(pathAfter(batch));
  }

  async function undo(entry: string) {
    found.value = hindrance(await takeBack(entry));
  }

  return {
    typed: now,
    type,
    isCounted,
    instruments,
    instrument,
    better: betterThan(instrument, line, instruments),
    lot,
    from: from === place ? null : from,
    body,
    measured: measurement,
    weighed: means,
    hindrance: found,
    save,
    undo,
  };
}

/** What was measured means, with the correction in force now, also for where one stops. */
function meaning(
  line: BatchLine,
  measurement: Body | null,
  by: { unit: string; tare: string | null; division: string | null; instrument: string | null },
): Weighed | null {
  const at = new Date(nowMs()).toISOString();
  const { instrument, unit, tare } = by;
  const plain = weighed(line, null, by);
  if (instrument === null || plain === null) return weighed(line, measurement, by);
  const stop = {
    reading: { instrument, unit, shown: plain.stop_at ?? "0", ...(tare === null ? {} : { tare }) },
  };
  const there = trusted(stop, at);
  return weighed(line, measurement, {
    ...by,
    trusted: measurement && trusted(measurement, at),
    correction: there === null ? ZERO : difference(there.value, there.read.net),
  });
}

/** Too little, and another lot of this line stands ready: one stays on the line. */
function isToBeAddedTo(line: BatchLine, means: Weighed | null, lot: string | null): boolean {
  const isTooLittle = means?.verdict === "outside" && !means.is_over;
  return isTooLittle && line.laid_out.some((code) => code !== lot);
}
