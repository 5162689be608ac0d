/** What happened to a lot, in words; the old value is never lost. */
import { type Body, itemsIn, objectIn, quantityIn, textIn, textsIn } from "../../calc/bodies.ts";
import type { FillCheck } from "../../calc/fill_trust.ts";
import { plain } from "../../calc/numbers.ts";
import type { Standing } from "../../calc/record.ts";
import { movedAmount } from "../../calc/stock_moves.ts";
import { nameOf } from "../../state/stock.ts";
import { DID, FILL_VERDICTS, SAID } from "../../text/lot.ts";
import { amountWords } from "../../text/numbers.ts";
import type { EntryWords } from "../common/history.ts";

/** Words of the entries about the lot `code`; its sheet says what its fill checks came to. */
export function lotWords(
  code: string,
  fills: readonly Pick<FillCheck, "entry" | "verdict">[],
): (entry: Standing) => EntryWords {
  return (entry) => ({
    did: DID[entry.kind] ?? entry.kind.replaceAll("_", " "),
    says: saysOf(entry, fills),
    amount: amountOf(code, entry),
  });
}

/** The amount as it was read; where there is none of its own, what moved in base units. */
function amountOf(code: string, fact: Standing): string {
  const own = quantityIn(fact.body, "amount") ?? quantityIn(fact.body, "counted");
  if (own !== null) return amountWords(own.amount, own.unit);
  if (fact.kind === "fill_checked")
    return SAID.packs_of(textsIn(fact.body, "gross").length, labelOf(fact.body));
  const moved = movedAmount(fact, code);
  return moved === null ? "" : amountWords(plain(moved.value), moved.unit);
}

/** The words after the amount: from whom, to whom, where, why. */
function saysOf(
  { id, kind, body }: Standing,
  fills: readonly Pick<FillCheck, "entry" | "verdict">[],
): string {
  const name = (type: string, field: string) => nameOf(type, textIn(body, field));
  const at = SAID.at(name("place", "place"));
  const says: Record<string, () => string> = {
    receipt: () =>
      textIn(body, "condition") === "refused"
        ? SAID.refused(textIn(body, "refused_why") ?? "")
        : `${SAID.from(name("source", "source"))}, ${at}`,
    output: () => at,
    topped_up: () =>
      itemsIn(body, "from")
        .map((each) => textIn(each, "lot"))
        .join(" + "),
    weigh_in: () => at,
    loss: () => SAID.because(textIn(body, "reason") ?? ""),
    transfer: () =>
      `${SAID.from(name("place", "from_place"))} ${SAID.to(name("place", "to_place"))}`,
    dispatch: () => SAID.to(name("recipient", "recipient")),
    sale: () => at,
    return: () => SAID.because(textIn(body, "reason") ?? ""),
    count: () => at,
    fill_checked: () =>
      fills
        .filter((fill) => fill.entry === id)
        .map((fill) => FILL_VERDICTS[fill.verdict])
        .concat(textIn(body, "note") ?? [])
        .join(". "),
    note: () => textIn(body, "says") ?? "",
    finding_settled: () => textIn(body, "reason") ?? "",
    held: () => textIn(body, "reason") ?? "",
    hold_decided: () => `${textIn(body, "decision")}: ${textIn(body, "reason") ?? ""}`,
  };
  const despite = textIn(objectIn(body, "despite") ?? {}, "reason");
  const said = says[kind]?.() ?? "";
  return despite === null ? said : `${said}, ${SAID.despite(despite)}`;
}

function labelOf(body: Body): string {
  return itemsIn(body, "label")
    .map((each) => quantityIn(each, "amount"))
    .map((each) => (each === null ? "" : amountWords(each.amount, each.unit)))
    .join(" = ");
}
