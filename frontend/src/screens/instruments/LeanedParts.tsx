/** Parts of what leaned on an instrument: one batch or fill check, one reading. */

import { type Signal, useSignal } from "@preact/signals";
import { idIn, typeIn } from "../../calc/subjects.ts";
import { Cup } from "../../parts/Cup.tsx";
import { Part } from "../../parts/Plain.tsx";
import { heatVerdictInside } from "../../text/heat_rules.ts";
import { LEANED } from "../../text/instruments.ts";
import { amountWords, clockWords, dayWords, signedWords } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { dayOf, zone } from "../common/edge.ts";
import { movesText } from "../common/trust.ts";
import type { Change, LeanedReading, LeanedSheet } from "./leaned.ts";

const READINGS_AT_ONCE = 5;
const MORE_AT_ONCE = 100;

/** A batch or a lot with its readings in question and the verdicts that would change. */
export function InQuestion({ sheet }: { sheet: LeanedSheet }) {
  const shown = useSignal(READINGS_AT_ONCE);
  const isLot = typeIn(sheet.subject) === "lot";
  const id = idIn(sheet.subject);
  return (
    <Part title={sheet.title}>
      <p class={sheet.changes.length > 0 ? "in-question" : "second"}>
        {sheet.changes.length === 0
          ? LEANED.no_change
          : sheet.changes.map((each) => changeWords(each, isLot)).join("; ")}
      </p>
      <p class="second">{LEANED.readings(sheet.count)}</p>
      <ul class="leaned">
        {sheet.readings.slice(0, shown.value).map((each) => (
          <ReadingRow key={each.entry} reading={each} />
        ))}
      </ul>
      <ShowMore shown={shown} of={sheet.readings.length} />
      <p class="key-row">
        <Cup
          href={isLot ? `#/lot/${id}` : `#/batch/${id}`}
          name={`${sheetWords(isLot)}: ${sheet.title}`}
        >
          {sheetWords(isLot)}
        </Cup>
      </p>
    </Part>
  );
}

function sheetWords(isLot: boolean): string {
  return isLot ? LEANED.open_lot : LEANED.open_batch;
}

function changeWords({ name, was, now }: Change, isLot: boolean): string {
  const words = (verdict: string) =>
    isLot
      ? (LEANED.verdicts[verdict] ?? verdict)
      : (heatVerdictInside(verdict) ?? WEIGH_IN.verdict_word(verdict));
  return LEANED.changes(name, words(was), words(now));
}

/** When, what, what was read, and how far it would move. */
export function ReadingRow({ reading }: { reading: LeanedReading }) {
  const { happened_at, name, kind, read, unit } = reading;
  return (
    <li>
      <span>
        <b>{`${dayWords(dayOf(happened_at))} ${clockWords(happened_at, zone())}`}</b>{" "}
        <span class="rec">{name}</span>
      </span>
      <span>
        {read !== null && `${readWords(kind, read, unit)}, `}
        {movesWords(reading)}
      </span>
    </li>
  );
}

function readWords(kind: string, read: string, unit: string | null): string {
  return kind === "fill_checked"
    ? LEANED.mean_off(signedWords(movesText(read), unit))
    : LEANED.reads(amountWords(read, unit));
}

function movesWords({ kind, moves, unit }: LeanedReading): string {
  if (moves === null) return LEANED.unknown;
  const by = signedWords(movesText(moves), unit);
  return kind === "fill_checked" ? LEANED.mean_moves(by) : LEANED.moves(by);
}

/** There may be thousands: an old phone draws them in portions. */
export function ShowMore({ shown, of }: { shown: Signal<number>; of: number }) {
  const left = of - shown.value;
  if (left <= 0) return null;
  return (
    <p class="key-row">
      <Cup
        onPress={() => {
          shown.value += MORE_AT_ONCE;
        }}
      >
        {LEANED.more(Math.min(left, MORE_AT_ONCE))}
      </Cup>
    </p>
  );
}
