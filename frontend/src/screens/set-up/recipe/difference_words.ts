/** Differences between two versions in words, one sentence each. */
import { itemsIn, objectIn, textIn } from "../../../calc/bodies.ts";
import { nameOf } from "../../../state/stock.ts";
import { amountWords, figure, NOT_RECORDED } from "../../../text/numbers.ts";
import { PACK, YIELD } from "../../../text/recipe_lines.ts";
import { CHECKS, DIFFERS } from "../../../text/set_up_recipe.ts";
import type { Fields } from "../changes.ts";
import { valueWords } from "../values.ts";
import { changeWords } from "./change_words.ts";
import type { Difference } from "./differences.ts";

const LIMITS = ["below", "above", "low", "high"];
const PERCENTS = ["percent", "soluble_percent", "target_solids_percent", "loss_percent", "level"];

/** The whole sentence, with what it is about. */
export function differenceWords(difference: Difference): string {
  if (difference.of === "recipe") return fieldWords(difference, difference);
  if (!("item" in difference)) return DIFFERS[difference.of];
  const name = itemName(difference);
  if (difference.change !== "changed") return DIFFERS[difference.change](name);
  return `${name}, ${fieldWords(difference, difference, difference.item)}`;
}

/** `amount: 60 g becomes 66 g (+6 g, +10 %)`. */
export function fieldWords(
  at: { field: string },
  values: { from: unknown; to: unknown },
  item: Fields | null = null,
): string {
  const { field } = at;
  const unit = item === null ? null : unitOf(item);
  const [from, to] = [shown(field, values.from, unit), shown(field, values.to, unit)];
  const change = changeWords(values.from, values.to, unitOfField(field, unit));
  const words = DIFFERS.changed(DIFFERS.fields[field] ?? field, from, to);
  return change === null ? words : `${words} (${change})`;
}

/** Minutes and percents have a unit of their own, whatever the line or step is measured in. */
function unitOfField(field: string, unit: string | null): string | null {
  if (field === "minutes") return "min";
  return PERCENTS.includes(field) ? "%" : unit;
}

/** What a line or step is called. */
export function itemName(difference: { of: "line" | "step"; item: Fields; at: number }): string {
  if (difference.of === "line") return nameOf("material", textIn(difference.item, "material"));
  return DIFFERS.step(figure(String(difference.at + 1)));
}

/** The unit the limits of a line or step are in. */
function unitOf(item: Fields): string | null {
  return textIn(item, "unit") ?? textIn(objectIn(item, "amount") ?? {}, "unit");
}

function shown(field: string, value: unknown, unit: string | null): string {
  if (value === undefined) return NOT_RECORDED;
  if (field === "counts") return countsWords(value);
  if (field === "yields" || field === "pack_sizes") return groupsWords(field, value);
  if (typeof value !== "string") return valueWords(field, value);
  if (LIMITS.includes(field)) return amountWords(value, unit);
  if (PERCENTS.includes(field)) return amountWords(value, "%");
  if (field === "minutes") return amountWords(value, "min");
  if (field === "measures") return CHECKS[value] ?? value;
  return DIFFERS.values[value] ?? valueWords(field, value);
}

/** `line 3 with 100 %, line 5 with 62 %`: a version names its lines by their ids. */
function countsWords(value: unknown): string {
  const counts = itemsIn({ counts: value }, "counts").map((each) =>
    DIFFERS.counted(textIn(each, "line") ?? "", amountWords(textIn(each, "percent"), "%")),
  );
  return counts.join(", ") || NOT_RECORDED;
}

/** `71 %, pulp (from the table ...)`; `jar of 250 g, tub of 1 kg`. */
function groupsWords(field: string, value: unknown): string {
  const held = { [field]: value };
  const sizes = itemsIn(held, field).map((size) => {
    const net = objectIn(size, "net") ?? {};
    const amount = amountWords(textIn(net, "amount"), textIn(net, "unit"));
    const named = PACK.named(amount, textIn(size, "word") ?? "");
    const packaging = textIn(size, "packaging");
    return packaging === null ? named : `${named} (${nameOf("material", packaging)})`;
  });
  if (field === "pack_sizes") return sizes.join(", ") || NOT_RECORDED;
  const yields = objectIn(held, field) ?? {};
  const by = YIELD.by[textIn(yields, "by") ?? "typed"]?.(textIn(yields, "source") ?? "");
  const parts = [amountWords(textIn(yields, "percent"), "%"), textIn(yields, "prepared_as"), by];
  return parts.filter((part) => part).join(", ");
}
