/** Which numbers of an entry can be corrected, and the new body with them. */
import { objectIn, textIn } from "../../calc/bodies.ts";
import type { Body } from "../../state/types.ts";

/** A number that stands in a group of the body, such as `shown` in `reading`. */
export interface NumberPlace {
  key: string;
  group: string;
  name: string;
  unit: string | null;
  value: string | null;
  /** Blank takes it away: a bowl that was none. */
  isOptional: boolean;
}

const PLACES: Record<string, readonly (readonly [group: string, name: string])[]> = {
  weigh_in: [
    ["reading", "shown"],
    ["reading", "tare"],
    ["counted", "amount"],
  ],
  step_done: [
    ["reading", "shown"],
    ["reading", "tare"],
  ],
  output: [
    ["amount", "amount"],
    ["rejected", "amount"],
  ],
  loss: [["amount", "amount"]],
};

/** The numbers of a body that can be corrected, in their order. */
export function numbersOf(kind: string, body: Body): NumberPlace[] {
  return (PLACES[kind] ?? []).flatMap(([group, name]) => {
    const found = objectIn(body, group);
    if (found === null) return [];
    return [
      {
        key: `${group}.${name}`,
        group,
        name,
        unit: textIn(found, "unit"),
        value: textIn(found, name),
        isOptional: name === "tare",
      },
    ];
  });
}

/** The whole new body: these numbers and this instrument, all else as it was. */
export function correctedBody(
  body: Body,
  numbers: readonly { group: string; name: string; value: string | null }[],
  instrument: { id: string; division: string | null; repeatability: string | null } | null,
): Body {
  let corrected: Body = body;
  for (const { group, name, value } of numbers) {
    corrected = { ...corrected, [group]: withField(objectIn(corrected, group) ?? {}, name, value) };
  }
  const reading = objectIn(corrected, "reading");
  if (reading === null || instrument === null) return corrected;
  // Another instrument brings its own steps; its readings are judged by them.
  const own = withField(
    withField({ ...reading, instrument: instrument.id }, "division", instrument.division),
    "repeatability",
    instrument.repeatability,
  );
  return { ...corrected, reading: own };
}

function withField(group: Body, name: string, value: string | null): Body {
  const { [name]: _old, ...others } = group;
  return value === null ? others : { ...others, [name]: value };
}
