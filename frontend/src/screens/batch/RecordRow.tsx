/** One entry of a batch as a row that opens: its budget, its corrections, the way to correct it. */
import type { ComponentChildren } from "preact";
import { type Body, objectIn, quantityIn, textIn } from "../../calc/bodies.ts";
import { plain } from "../../calc/numbers.ts";
import { weighingOf } from "../../calc/weighing.ts";
import { Cup } from "../../parts/Cup.tsx";
import { EntryRow, type EntryState, OpenRow, TwoCorrections } from "../../parts/EntryRow.tsx";
import { Budget } from "../../parts/NumberShown.tsx";
import { correct, type HeldEntry, takeBack } from "../../state/record.ts";
import { current } from "../../state/session.ts";
import { nameOf } from "../../state/stock.ts";
import { BATCH } from "../../text/finish.ts";
import { amountWords, clockWords, dayWords, figure } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { readingBudget } from "../common/budget.ts";
import { ClockOff } from "../common/ClockOff.tsx";
import { dayOf, today, zone } from "../common/edge.ts";
import { byWhom, inForce, rivalsOf, voidedOf, voidOf } from "../common/standing.ts";
import { entryState } from "../weigh-in/LineEntries.tsx";

type Held = readonly HeldEntry[];

/** What a row shows; `amount` is the figure in force. */
export interface RecordRowProps {
  batch: string;
  entry: string;
  held: Held;
  thing: ComponentChildren;
  amount: string;
  more: ComponentChildren;
  time?: string | undefined;
  author?: string | undefined;
  /** Where the same thing can be read again. */
  again?: string | undefined;
}

/** Corrected ones keep the old figure, struck; where two corrections disagree both stand as cups. */
export function RecordRow(props: RecordRowProps) {
  const { entry, held } = props;
  const own = held.find((each) => each.entry.id === entry);
  const rivals = rivalsOf(held, entry);
  if (rivals.length > 0) return <Contested {...props} rivals={rivals} />;
  const body = inForce(held, entry);
  const was = own === undefined ? "" : amountOf(own.entry.body);
  const isCorrected = body !== null && was !== "" && was !== amountOf(body);
  return (
    <OpenRow
      thing={props.thing}
      figure={
        <>
          {isCorrected && <del class="struck">{was}</del>} {props.amount}
        </>
      }
      more={
        <>
          {props.time} {props.more} <ClockOff skew_ms={own?.skew_ms} />
        </>
      }
      state={stateOf(own, entry)}
    >
      <Inside {...props} body={body} />
    </OpenRow>
  );
}

/** In the log under its number, where this phone holds the entry. */
function stateOf(own: HeldEntry | undefined, entry: string): EntryState {
  return own?.seq ? { is: "log", number: own.seq } : entryState(entry);
}

/** The amount an entry says, as it was read. */
function amountOf(body: Body): string {
  const weighing = weighingOf(body);
  if (weighing !== null) return amountWords(plain(weighing.net), weighing.unit);
  const amount = quantityIn(body, "amount");
  return amount === null ? "" : amountWords(amount.amount, amount.unit);
}

function Inside({
  batch,
  entry,
  held,
  author,
  again,
  body,
}: RecordRowProps & { body: Body | null }) {
  const happened_at = held.find((each) => each.entry.id === entry)?.entry.happened_at;
  const budget = readingBudget(body, happened_at);
  return (
    <>
      {budget !== null && <Budget lines={budget} />}
      {author && (
        <p class="second">
          {BATCH.by} <span class="rec">{nameOf("member", author)}</span>
        </p>
      )}
      <Corrections entry={entry} held={held} />
      <p class="key-row">
        {again && <Cup href={again}>{BATCH.again}</Cup>}
        <Cup href={`#/correct/${batch}/${entry}`}>{PARTS.correct}</Cup>
      </p>
    </>
  );
}

/** Every value it had before, with who changed it, when and why. */
function Corrections({ entry, held }: { entry: string; held: Held }) {
  const chain = chainOf(entry, held);
  return (
    <>
      {chain.map(({ before, by }) => (
        <p key={by.entry.id} class="second">
          <del class="struck">{before}</del> {PARTS.corrected_by(momentOf(by))}{" "}
          <span class="rec">{nameOf("member", by.entry.author)}</span>: “
          <span class="rec">{textIn(by.entry.body, "reason")}</span>”
        </p>
      ))}
    </>
  );
}

/** The corrections of an entry and of its corrections, each with the value it replaced. */
function chainOf(entry: string, held: Held): { before: string; by: HeldEntry }[] {
  const own = held.find((each) => each.entry.id === entry)?.entry;
  const by = held.find(
    (each) => each.entry.kind === "correction" && each.entry.body.corrects === entry,
  );
  if (own === undefined || by === undefined) return [];
  const body = own.kind === "correction" ? (objectIn(own.body, "body") ?? {}) : own.body;
  return [{ before: amountOf(body), by }, ...chainOf(by.entry.id, held)];
}

function momentOf({ entry }: HeldEntry): string {
  const on = dayOf(entry.recorded_at);
  const clock = clockWords(entry.recorded_at, zone());
  return on === today() ? clock : `${dayWords(on)}, ${clock}`;
}

/** Two corrections disagree: a coordinator chooses one, and it stands instead of both. */
function Contested(props: RecordRowProps & { rivals: HeldEntry[] }) {
  const { entry, held, rivals } = props;
  const own = held.find((each) => each.entry.id === entry);
  const mayChoose = current.value?.member.roles.includes("coordinator") ?? false;
  const choose = (id: string) => {
    const chosen = rivals.find((each) => each.entry.id === id)?.entry;
    if (chosen === undefined) return;
    const reason = BATCH.chosen(textIn(chosen.body, "reason") ?? "");
    const body = objectIn(chosen.body, "body");
    void (body === null ? takeBack(entry, reason) : correct(entry, body, reason));
  };
  return (
    <TwoCorrections
      time={props.time ?? ""}
      thing={
        <>
          {props.thing} {props.more}
        </>
      }
      counts={BATCH.until_chosen(own === undefined ? props.amount : amountOf(own.entry.body))}
      both={rivals.map((each) => ({
        id: each.entry.id,
        value: amountOf(objectIn(each.entry.body, "body") ?? {}) || BATCH.never,
        by: nameOf("member", each.entry.author),
        when: momentOf(each),
      }))}
      onChoose={mayChoose ? choose : undefined}
    />
  );
}

/** Entries taken back or voided: struck, with the reason, in their place at the end of their part. */
export function Voided({ held, kind }: { held: Held; kind: string }) {
  return (
    <>
      {voidedOf(held, kind).map(({ entry }) => {
        const by = byWhom(held, voidOf(held, entry.id));
        return (
          <EntryRow
            key={entry.id}
            time={clockWords(entry.happened_at, zone())}
            state={{
              is: "void",
              by: by?.author ?? "",
              when: by === null ? figure(null) : clockWords(by.at, zone()),
              reason: by?.reason ?? "",
            }}
          >
            {amountOf(entry.body)}
          </EntryRow>
        );
      })}
    </>
  );
}

/** Within is quiet; cannot tell is hatched, outside marigold. */
export function VerdictWord({ verdict }: { verdict: string | null }) {
  if (verdict === null) return null;
  const look = { outside: "shout", cannot_tell: "doubtful" }[verdict];
  return <span class={look ?? ""}>{WEIGH_IN.verdict_word(verdict)}</span>;
}
