/** One sum on a screen: what is typed and remembered, its answer, and noting it on a batch. */
import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import type { BatchState } from "../../calc/batches.ts";
import { asDouble, parseDecimal, plain } from "../../calc/numbers.ts";
import { fromBase } from "../../calc/units.ts";
import { record } from "../../state/record.ts";
import { kitchen, remember, remembered } from "../../state/settings.ts";
import { places } from "../../state/stock.ts";
import { amountWords } from "../../text/numbers.ts";
import { DOUBT, SUMS } from "../../text/sums.ts";
import { batchOf, lineName, targetOf } from "../common/batches.ts";
import { scalesAt } from "../common/scales.ts";
import { type Hindrance, hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { doubtKey, type Measured, measuredIn, withDoubts } from "./doubts.ts";
import {
  eachAsked,
  type Found,
  type NumberAsked,
  type OneAsked,
  type Row,
  type SumAbout,
  type SumPlan,
  type Typed,
  unitOf,
} from "./plan.ts";

const KG_PLACES = 6;

/** What a batch, or the place one stands in, says by itself. */
function sumAbout(batch: BatchState | null): SumAbout {
  const place = places.value.find((each) => each.id === (batch?.place ?? kitchen.value));
  const altitude = place?.fields.altitude_m;
  const lines = (batch?.lines ?? []).filter((line) => line.unit === "g" && line.in_base !== null);
  return {
    lines: lines.map((line) => ({
      name: lineName(line),
      amount: kilograms(line.prepared ?? line.in_base),
      solids_percent: line.soluble_percent,
      u: line.u === null ? 0 : asDouble(fromBase(parseDecimal(line.u), "kg", KG_PLACES * 2)),
    })),
    target_percent: batch === null ? null : targetOf(batch),
    altitude_m: typeof altitude === "string" ? altitude : null,
  };
}

function kilograms(grams: string | null): string | null {
  return grams === null ? null : plain(fromBase(parseDecimal(grams), "kg", KG_PLACES));
}

/** What was typed last, kept on this phone; what is about a batch only for that one. */
function rememberedTyped(key: string, batch: string): Typed {
  const kept = remembered(key);
  if (typeof kept !== "object" || kept === null || Array.isArray(kept)) return {};
  if ((kept.batch ?? "") !== batch) return {};
  const texts = Object.entries(kept).filter(([, value]) => typeof value === "string");
  return Object.fromEntries(texts) as Typed; // only texts are left
}

/** The sum of this name; `batch` is "" where it is asked for no batch. */
export function useSum(plan: SumPlan, name: string, batch: string) {
  const state = batch === "" ? null : (batchOf(batch)?.state ?? null);
  const about = sumAbout(state);
  const key = `sums/${name}`;
  const begin = useMemo(() => plan.begin(about), [plan, JSON.stringify(about)]);
  const kept = useMemo(() => rememberedTyped(key, batch), [key, batch]);
  const own = useSignal<Typed>(kept);
  const typed: Typed = { ...begin, ...own.value };
  const asked = plan.asked(typed, about);
  const scales = scalesAt(state?.place ?? kitchen.value);
  const scale = scales.find(({ id }) => id === typed.scale) ?? null;
  const answer = withDoubts(plan, typed, about, scale);
  const measured = measuredIn(asked, typed);
  const open = useSignal<string | null>(answer.is === "missing" ? answer.key : null);
  const found = useSignal<Hindrance | null>(null);
  const isNoted = useSignal(false);
  useEffect(() => {
    isNoted.value = false;
  }, [JSON.stringify(typed)]);

  return {
    about,
    typed,
    asked,
    measured,
    scales,
    answer,
    open,
    found: found.value,
    isNoted: isNoted.value,
    numberOpen: numberNamed([...eachAsked(asked), ...limitsOf(measured, typed)], open.value),
    type(part: Typed) {
      own.value = { ...own.value, ...part };
      remember(key, { ...own.value, batch });
    },
    rubOut() {
      own.value = {};
      remember(key, null);
    },
    async note(onBatch: string) {
      if (answer.is !== "found") return;
      const says = noteWords(plan, answer);
      found.value = hindrance(await record("note", { subject: `batch:${onBatch}`, says }));
      if (found.value !== null) return;
      tremble(1);
      isNoted.value = true;
    },
  };
}

/** The limits of each measured number, typed on the same keys. */
function limitsOf(measured: readonly Measured[], typed: Typed): NumberAsked[] {
  return measured.map(({ asked, label }) => ({
    is: "number",
    key: doubtKey(asked.key),
    label: DOUBT.off(label),
    units: [unitOf(typed, asked)],
  }));
}

function numberNamed(asked: readonly OneAsked[], key: string | null): NumberAsked | null {
  const found = asked.find((each) => each.key === key);
  return found?.is === "number" ? found : null;
}

/** `give or take 0.05 kg`; null while nothing is known of it. */
export function offWords({ uncertainty, coverage }: Row): string | null {
  return uncertainty && coverage ? DOUBT.give_or_take(uncertainty) : null;
}

/** The sum as one note: what to do, from what, and what else came out. */
export function noteWords(plan: SumPlan, { says, main, why, rows }: Found): string {
  const first =
    main === null
      ? says
      : `${says} ${[amountWords(main.amount, main.unit), offWords(main)].filter(Boolean).join(", ")}.`;
  const inputs = [
    ...new Set(
      rows.flatMap((row) => row.inputs ?? []).map(({ name, value }) => `${name} ${value}`),
    ),
  ];
  const results = rows
    .filter((row) => row.name !== main?.name && row.basis === "computed")
    .map((row) => `${row.name} ${amountWords(row.amount, row.unit)}`);
  return SUMS.note_says(
    plan.title,
    [first, why ?? "", `${[...inputs, ...results].join("; ")}.`].filter(Boolean).join(" "),
  );
}

export type Sum = ReturnType<typeof useSum>;
