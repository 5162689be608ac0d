/** What an instrument is, as rows to read. */
import { quantityIn, textIn } from "../../calc/bodies.ts";
import type { InstrumentState } from "../../calc/instruments.ts";
import { nameOf } from "../../state/stock.ts";
import { INSTRUMENTS } from "../../text/instruments.ts";
import { amountWords, unitWord } from "../../text/numbers.ts";
import { VALUES } from "../../text/set_up.ts";

/** Only what is known has a row. */
export function factsOf({ fields }: InstrumentState): { name: string; value: string }[] {
  const unit = textIn(fields, "unit");
  const place = textIn(fields, "place");
  const holds = quantityIn(fields, "holds");
  const amount = (name: string) => {
    const text = textIn(fields, name);
    return text === null ? null : amountWords(text, unit);
  };
  const sort = textIn(fields, "sort") ?? "";
  const { check_days, check_uses } = fields;
  const every = INSTRUMENTS.every_words(wholeIn(check_days), wholeIn(check_uses));
  const rows: [string, string | null][] = [
    [INSTRUMENTS.shows, `${VALUES[sort] ?? sort}, ${unitWord(unit)}`],
    [INSTRUMENTS.place, place === null ? INSTRUMENTS.nowhere : nameOf("place", place)],
    [INSTRUMENTS.step, amount("division")],
    [INSTRUMENTS.most, amount("capacity")],
    [INSTRUMENTS.holds, holds && amountWords(holds.amount, holds.unit)],
    [INSTRUMENTS.interval, amount("interval")],
    [INSTRUMENTS.accuracy_class, textIn(fields, "accuracy_class")],
    [INSTRUMENTS.good_for, textIn(fields, "good_for")],
    [INSTRUMENTS.every, every],
  ];
  return rows.flatMap(([name, value]) => (value ? [{ name, value }] : []));
}

function wholeIn(value: unknown): number | null {
  return typeof value === "number" ? value : null;
}
