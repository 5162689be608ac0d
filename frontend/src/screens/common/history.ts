/** The history of a subject: each entry as it stands, with its corrections and voids beside it. */
import { type Body, objectIn, textIn } from "../../calc/bodies.ts";
import { asItStands, type Standing } from "../../calc/record.ts";
import type { HeldEntry } from "../../state/record.ts";
import { DID_NOT_HAPPEN } from "../../text/correct.ts";
import { asFact, type ByWhom, byWhom, voidOf } from "./standing.ts";

/** An entry in words: what was done, how much of it, and where or why. */
export interface EntryWords {
  did: string;
  amount: string;
  says: string;
}

/** One entry of the history. `is` decides how the row is drawn. */
export interface HistoryRow extends EntryWords {
  id: string;
  held: HeldEntry;
  kind: string;
  is: "plain" | "corrected" | "void" | "contested";
  was: string;
  by: ByWhom | null;
  rivals: { id: string; amount: string; by: ByWhom }[];
  /** The body in force; null where it is void. */
  body: Body | null;
}

const ABOUT_ENTRIES = ["correction", "void"];

/** The rows in business order, of all entries held about a subject. */
export function historyOf(
  held: readonly HeldEntry[],
  wordsOf: (entry: Standing) => EntryWords,
): HistoryRow[] {
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
      const own = { ...asFact(each), was: [] };
      const now = standing.get(each.entry.id);
      const rivals = contested.get(each.entry.id) ?? [];
      return {
        ...wordsOf(now ?? own),
        kind: (now ?? own).kind,
        id: each.entry.id,
        held: each,
        is: isOf(now, rivals),
        was: wordsOf(own).amount,
        by: byWhom(held, now?.was.at(-1)?.entry ?? voidOf(held, each.entry.id)),
        rivals: rivals.flatMap((id) => rivalOf(held, id, wordsOf)),
        body: now?.body ?? null,
      };
    });
}

function isOf(now: Standing | undefined, rivals: readonly string[]): HistoryRow["is"] {
  if (now === undefined) return "void";
  if (rivals.length > 0) return "contested";
  return now.was.length > 0 ? "corrected" : "plain";
}

function rivalOf(
  held: readonly HeldEntry[],
  id: string,
  wordsOf: (entry: Standing) => EntryWords,
): HistoryRow["rivals"] {
  const found = held.find(({ entry }) => entry.id === id);
  const by = byWhom(held, id);
  if (found === undefined || by === null) return [];
  const body = objectIn(found.entry.body, "body") ?? {};
  const isVoid = found.entry.kind === "void";
  const kind = textIn(found.entry.body, "of_kind") ?? "";
  const entry = { ...asFact(found), kind, body, was: [] };
  return [{ id, amount: isVoid ? DID_NOT_HAPPEN : wordsOf(entry).amount, by }];
}
