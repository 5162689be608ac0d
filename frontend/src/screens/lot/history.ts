/** The history of a lot: each entry as it stands, with its corrections and voids beside it. */
import { itemsIn, objectIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { plain } from "../../calc/numbers.ts";
import { asItStands, type Fact, type Standing } from "../../calc/record.ts";
import { movedAmount } from "../../calc/stock_moves.ts";
import type { HeldEntry } from "../../state/record.ts";
import { nameOf } from "../../state/stock.ts";
import { DID, DID_NOT_HAPPEN, SAID } from "../../text/lot.ts";
import { amountWords } from "../../text/numbers.ts";
import { asFact, type ByWhom, byWhom, voidOf } from "../shared/standing.ts";

/** One entry of the history. `is` decides how the row is drawn. */
export interface HistoryRow {
  id: string;
  held: HeldEntry;
  kind: string;
  did: string;
  says: string;
  amount: string;
  is: "plain" | "corrected" | "void" | "contested";
  was: string;
  by: ByWhom | null;
  rivals: { id: string; amount: string; by: ByWhom }[];
  /** The body in force; null where it is void. */
  body: Fact["body"] | null;
}

const ABOUT_ENTRIES = ["correction", "void"];

/** The rows in business order, of all entries held about `lot:<code>`. */
export function historyOf(code: string, held: readonly HeldEntry[]): HistoryRow[] {
  const facts = held.map(asFact);
  const record = asItStands(facts);
  const standing = new Map(record.standing.map((each) => [each.id, each]));
  const contested = new Map(
    record.findings
      .filter((each) => each.what === "two_corrections")
      .map((each) => [each.entry ?? "", (each.detail?.corrections ?? "").split(" ")]),
  );
  return held
    .filter(({ entry }) => !ABOUT_ENTRIES.includes(entry.kind))
    .map((each) => {
      const own = facts.find((fact) => fact.id === each.entry.id);
      const now = standing.get(each.entry.id);
      const shown = now ?? (own === undefined ? undefined : { ...own, was: [] });
      const rivals = contested.get(each.entry.id) ?? [];
      return {
        ...wordsOf(code, shown),
        id: each.entry.id,
        held: each,
        is: isOf(now, rivals),
        was: own === undefined ? "" : amountOf(code, { ...own, was: [] }),
        by: byWhom(held, now?.was.at(-1)?.entry ?? voidOf(held, each.entry.id)),
        rivals: rivals.flatMap((id) => rivalOf(code, held, id)),
        body: now?.body ?? null,
      };
    });
}

function isOf(now: Standing | undefined, rivals: readonly string[]): HistoryRow["is"] {
  if (now === undefined) return "void";
  if (rivals.length > 0) return "contested";
  return now.was.length > 0 ? "corrected" : "plain";
}

function rivalOf(code: string, held: readonly HeldEntry[], id: string) {
  const found = held.find(({ entry }) => entry.id === id);
  const by = byWhom(held, id);
  if (found === undefined || by === null) return [];
  const body = objectIn(found.entry.body, "body") ?? {};
  const isVoid = found.entry.kind === "void";
  const kind = textIn(found.entry.body, "of_kind") ?? "";
  const fact = { ...asFact(found), kind, body, was: [] };
  return [{ id, amount: isVoid ? DID_NOT_HAPPEN : amountOf(code, fact), by }];
}

function wordsOf(code: string, shown: Standing | undefined) {
  if (shown === undefined) return { kind: "", did: "", says: "", amount: "" };
  return {
    kind: shown.kind,
    did: DID[shown.kind] ?? shown.kind.replaceAll("_", " "),
    says: saysOf(shown.kind, shown.body),
    amount: amountOf(code, shown),
  };
}

/** The amount as it was read; where there is none of its own, what moved in base units. */
function amountOf(code: string, fact: Fact & { was: Standing["was"] }): string {
  const own = quantityIn(fact.body, "amount") ?? quantityIn(fact.body, "counted");
  if (own !== null) return amountWords(own.amount, own.unit);
  const moved = movedAmount(fact, code);
  return moved === null ? "" : amountWords(plain(moved.value), moved.unit);
}

/** The words after the amount: from whom, to whom, where, why. */
function saysOf(kind: string, body: Fact["body"]): string {
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
    note: () => textIn(body, "says") ?? "",
    finding_settled: () => textIn(body, "reason") ?? "",
  };
  return says[kind]?.() ?? "";
}
