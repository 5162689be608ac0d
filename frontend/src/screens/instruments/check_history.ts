/** A check in words for a history, and its numbers that can be corrected. */
import { type Body, itemsIn, textIn, textsIn } from "../../calc/bodies.ts";
import { checkedUnit, checkResult } from "../../calc/instrument_checks.ts";
import type { Standing } from "../../calc/record.ts";
import { CHECK, CORNER_WORDS, STAGES } from "../../text/checks.ts";
import { INSTRUMENTS, VERDICT_WORDS } from "../../text/instruments.ts";
import { amountWords } from "../../text/numbers.ts";
import type { EntryWords } from "../common/history.ts";
import { listIn, type NumberIn } from "../common/numbers_in.ts";
import { readAt, saidOf } from "./said.ts";

/** Verdict and sentence of a check of an instrument with these `fields`: what a correction moves. */
export function checkWords(fields: Body): (entry: Standing) => EntryWords {
  const sort = textIn(fields, "sort");
  return ({ body }) => {
    const result = checkResult(sort, body, fields);
    return {
      did: INSTRUMENTS.checked,
      amount: `${VERDICT_WORDS[result.verdict]}. ${saidOf({ ...result, unit: checkedUnit(sort, body) })}`,
      says: textIn(body, "note") ?? "",
    };
  };
}

/** Every reading of a check by the step it was read in, then what it was compared with. */
export function checkNumbers(body: Body): NumberIn[] {
  return [...readingsIn(body), ...referencesIn(body)];
}

/** A mass or value once, however many steps it was put on in, and how true it is. */
function referencesIn(body: Body): NumberIn[] {
  const unit = textIn(body, "unit");
  const places = new Map<string, number[]>();
  for (const [at, step] of itemsIn(body, "steps").entries()) {
    const key = `${textIn(step, "reference")} ${textIn(step, "tolerance")}`;
    if (textIn(step, "reference") !== null) places.set(key, [...(places.get(key) ?? []), at]);
  }
  return [...places.values()].flatMap((steps) => {
    const step = itemsIn(body, "steps")[steps[0] ?? 0] ?? {};
    const shown = amountWords(textIn(step, "reference"), unit);
    const named = (field: string, name: string) => {
      const value = textIn(step, field);
      const [path = "", ...also] = steps.map((at) => `steps.${at}.${field}`);
      return value === null ? [] : [{ path, name, unit, value, isOptional: false, also }];
    };
    return [
      ...named("reference", CHECK.known_was(shown)),
      ...named("tolerance", CHECK.give_or_take(shown)),
    ];
  });
}

function readingsIn(body: Body): NumberIn[] {
  const unit = textIn(body, "unit");
  return itemsIn(body, "steps").flatMap((step, at) => {
    const readings = textsIn(step, "readings");
    const place = stepWords(step, unit);
    const name = (number: number) => (readings.length > 1 ? `${place}, ${number}` : place);
    const tare = textIn(step, "tare");
    return [
      ...(tare === null
        ? []
        : [{ path: `steps.${at}.tare`, name: tareWords(), unit, value: tare, isOptional: false }]),
      ...listIn(readings, { path: `steps.${at}.readings`, unit, name }),
    ];
  });
}

function tareWords(): string {
  return STAGES.tare?.title("") ?? "";
}

/** Water is filled to a mark, not to the mass it shows. */
function stepWords(step: Body, unit: string | null): string {
  const sort = textIn(step, "sort") ?? "";
  if (sort === "water") return STAGES.water?.title("") ?? "";
  const corner = CORNER_WORDS[textIn(step, "where") ?? ""];
  const place = readAt(sort, textIn(step, "reference") ?? "0", unit);
  return corner === undefined ? place : `${place} ${corner}`;
}
