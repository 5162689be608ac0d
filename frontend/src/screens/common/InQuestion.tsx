/** One sentence where a reading's instrument failed or was due: said wherever the reading is shown. */
import type { BatchState } from "../../calc/batches.ts";
import { type Body, objectIn, textIn, textsIn } from "../../calc/bodies.ts";
import { type Trust, writtenTrust } from "../../calc/trusted.ts";
import { nameOf } from "../../state/stock.ts";
import { FITNESS } from "../../text/fitness.ts";
import { signedWords } from "../../text/numbers.ts";
import { batchOf } from "./batches.ts";
import { standingAt, wasDueIn } from "./instruments.ts";
import { checkNamed, movesText, trusted } from "./trust.ts";

/** What is known of the instrument; `moves` is about the figure shown. */
export type Questioned = Pick<Trust, "is_extrapolated" | "failed_by" | "moves">;

/** Nothing for a reading nobody doubts. A sheet of an earlier version knows no trust. */
export function InQuestion(props: {
  trust: Questioned | undefined;
  instrument: string | null | undefined;
  unit: string | null;
  happened_at: string | undefined;
}) {
  const { trust, unit, instrument = null, happened_at } = props;
  if (!trust?.failed_by) {
    return (
      <>
        {trust?.is_extrapolated && <span>{FITNESS.beyond}</span>}
        {instrument !== null && happened_at && <WasDue {...{ instrument, happened_at }} />}
      </>
    );
  }
  const on = checkNamed(instrument, trust.failed_by)?.on ?? null;
  return (
    <span class="in-question">
      {FITNESS.failed_on(nameOf("instrument", instrument), on)}
      {trust.moves !== null && ` ${FITNESS.would_move(signedWords(movesText(trust.moves), unit))}`}
    </span>
  );
}

/** Nothing where a check was not due when it was read. */
export function WasDue({ instrument, happened_at }: { instrument: string; happened_at: string }) {
  if (standingAt(instrument, happened_at).is !== "due") return null;
  return <span class="in-question">{FITNESS.was_due(nameOf("instrument", instrument))}</span>;
}

/**
 * The same for what was read in the body of an entry: one reading, a weighing of several times, or
 * packs, of which how far they would move is not said.
 */
export function BodyInQuestion({ body, happened_at }: { body: Body; happened_at: string }) {
  const one = objectIn(body, "reading");
  const reading = one ?? firstOf(body);
  if (reading === null) return null;
  const trust = writtenTrust(trusted({ reading }, happened_at));
  return (
    <InQuestion
      trust={one === null ? { ...trust, moves: null } : trust}
      instrument={textIn(reading, "instrument")}
      unit={textIn(reading, "unit")}
      happened_at={happened_at}
    />
  );
}

/** The first of several masses that were read one after the other. */
function firstOf(body: Body): Body | null {
  const [several, name] =
    "gross" in body ? [body, "gross"] : [objectIn(body, "weighing") ?? {}, "shown"];
  const [shown] = textsIn(several, name);
  const instrument = textIn(several, "instrument");
  const unit = textIn(several, "unit");
  if (shown === undefined || instrument === null || unit === null) return null;
  const division = textIn(several, "division");
  return { instrument, unit, shown, ...(division === null ? {} : { division }) };
}

/** A batch that was measured with what failed a check, or was due for one: said wherever something of it is shown. */
export function BatchInQuestion({ batch }: { batch: string | null }) {
  const state = batch === null ? null : (batchOf(batch)?.state ?? null);
  const says =
    state === null
      ? null
      : isInQuestion(state)
        ? FITNESS.of_batch
        : wasDueIn(state)
          ? FITNESS.of_batch_due
          : null;
  return says === null ? null : (
    <p>
      <span class="in-question">{says}</span>
    </p>
  );
}

/** The same in a few words, beside its name in a list; null where there is nothing to say. */
export function doubtOfBatch(batch: BatchState): string | null {
  if (isInQuestion(batch)) return FITNESS.batch_failed;
  return wasDueIn(batch) ? FITNESS.batch_due : null;
}

/** An instrument of it failed a check, and nobody has looked at that yet. */
function isInQuestion({ findings }: BatchState): boolean {
  return findings.some((each) => each.what === "instrument_failed" && !each.is_settled);
}
