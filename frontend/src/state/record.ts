/** The one way an entry is made: parse, stamp, save, fold. */
import type { KindName } from "../entries/kinds.ts";
import { slips } from "../store/reads.ts";
import { askPersistence } from "./app_storage.ts";
import { writeDraft } from "./drafts.ts";
import { current, type House, house, report, withDb } from "./house.ts";
import { adding, writing } from "./lazy.ts";
import type { Made, MadeTogether, Maker, Part } from "./making.ts";
import { noteSaved } from "./outbox.ts";
import { fetchAbout, heldRows, refold } from "./shelf.ts";
import type { Entry, Saved, SavedTogether, TroubleKey } from "./types.ts";

export type { Part } from "./making.ts";

export interface RecordOptions {
  /** When it happened, if the person says otherwise than now: "YYYY-MM-DDTHH:MM:SS.mmmZ". */
  happened_at?: string;
  /** Called as soon as the entry is on this phone for good, before its sheets are added up. */
  onKept?: (entry: Entry) => void;
}

/** Two taps this close are one tap (R7). */
const DOUBLE_TAP_MS = 400;

let lastTap: { on: House; words: string; at_ms: number; answer: Promise<Saved> } | null = null;

/** Saves one entry. `saved` is answered only when it is on this phone for good (R5). */
export function record(kind: KindName, body: object, options: RecordOptions = {}): Promise<Saved> {
  return once(JSON.stringify([kind, body, options]), () =>
    saving(async (maker) => (await writing()).make(maker, kind, body, options), options.onKept),
  );
}

/**
 * Writes a correction of the entry, or of its correction in force. Where two are in conflict,
 * this one decides: it stands instead of both.
 */
export function correct(entryId: string, newBody: object, reason: string): Promise<Saved> {
  return once(JSON.stringify(["correct", entryId, newBody, reason]), () =>
    saving(async (maker) => (await writing()).makeCorrection(maker, entryId, newBody, reason)),
  );
}

/** Voids an entry: within the same screen as a slip, later with a reason. */
export function takeBack(entryId: string, reason = "slip"): Promise<Saved> {
  return once(JSON.stringify(["void", entryId]), () =>
    saving(async (maker) => (await writing()).makeVoid(maker, entryId, reason)),
  );
}

/** An entry about a subject, as the rows of a screen show it. */
export interface HeldEntry {
  entry: Entry;
  /** Its number in the log, or null while it is on this phone only. */
  seq: number | null;
  is_waiting: boolean;
  /** The server's clock less that of the phone that handed it over, where the server said it. */
  skew_ms?: number | undefined;
}

/** All entries about a subject, in business order; asks the server for missing ones first. */
export async function entriesAbout(subject: string): Promise<HeldEntry[]> {
  await fetchAbout(subject);
  return entriesHeld(subject);
}

/** The entries about a subject that this phone holds, in business order; waits for no network. */
export async function entriesHeld(subject: string): Promise<HeldEntry[]> {
  const rows = await heldRows(subject);
  const { factOf, inBusinessOrder } = await adding();
  const waiting = new Set(((await withDb(slips)) ?? []).map((slip) => slip.id));
  const ordered = inBusinessOrder(rows.map((row) => ({ ...factOf(row), row })));
  return ordered.map(({ row }) => ({
    entry: row.entry,
    seq: row.seq,
    is_waiting: waiting.has(row.id),
    skew_ms: row.skew_ms,
  }));
}

/** A second tap on the same thing gets the first tap's answer. */
function once(words: string, save: () => Promise<Saved>): Promise<Saved> {
  const on = house();
  const at_ms = on.world.nowMs();
  const isSame = lastTap?.words === words && lastTap.on === on;
  if (lastTap !== null && isSame && Math.abs(at_ms - lastTap.at_ms) < DOUBLE_TAP_MS) {
    return lastTap.answer;
  }
  const answer = save();
  lastTap = { on, words, at_ms, answer };
  return answer;
}

const savingForms = new Map<string, Promise<SavedTogether>>();

/**
 * Saves the entries of one act and ends the draft of the form they were typed into, all in one
 * transaction. A second tap while it is being saved gets the first tap's answer.
 */
export function recordTogether(parts: readonly Part[], form: string): Promise<SavedTogether> {
  return formOnce(form, async (maker) => (await writing()).makeTogether(maker, parts, form));
}

/**
 * Writes what happened at another moment than its entry says: that one is void, and what it says
 * in force stands anew at the right moment. Ends the draft of the form with it.
 */
export function move(
  entryId: string,
  to: { happened_at: string; reason: string; form: string },
): Promise<SavedTogether> {
  return formOnce(to.form, async (maker) => (await writing()).makeMoved(maker, entryId, to));
}

type MakingTogether = (maker: Maker) => Promise<MadeTogether | null>;

function formOnce(form: string, work: MakingTogether): Promise<SavedTogether> {
  const running = savingForms.get(form);
  if (running !== undefined) return running;
  const answer = saveAll(form, work).finally(() => savingForms.delete(form));
  savingForms.set(form, answer);
  return answer;
}

async function saveAll(form: string, work: MakingTogether): Promise<SavedTogether> {
  await writeDraft(form); // or it could be written once more after it was ended
  const made = await attempted(work);
  if (!("saved" in made)) return made;
  await drawn();
  for (const entry of made.saved) noteSaved(entry, house().world.nowMs());
  await afterSaving(made.saved[0]?.device ?? "", made.subjects);
  return { saved: made.saved };
}

async function saving(
  work: (maker: Maker) => Promise<Made | null>,
  onKept: (entry: Entry) => void = () => undefined,
): Promise<Saved> {
  const made = await attempted(work);
  if (!("saved" in made)) return made;
  onKept(made.saved);
  await drawn(); // the word that it is kept, before the gauge and the sums
  noteSaved(made.saved, house().world.nowMs());
  await afterSaving(made.saved.device, made.subjects);
  return { saved: made.saved };
}

async function attempted<T extends object>(
  work: (maker: Maker) => Promise<T | null>,
): Promise<T | { trouble: TroubleKey }> {
  const who = current.value;
  if (who === null) return { trouble: "trouble.nobody" };
  try {
    const made = await withDb((db) =>
      work({
        db,
        who,
        nowMs: house().world.nowMs(),
        bytes: house().world.bytes,
        zone: house().zone(),
        app_version: __APP_VERSION__,
      }),
    );
    return made ?? { trouble: "trouble.storage" };
  } catch (trouble) {
    return { trouble: troubleKey(trouble) };
  }
}

/** After what was just shown has been put on the screen's page. */
function drawn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

/** What follows a save cannot unsay it. */
async function afterSaving(device: string, subjects: string[]): Promise<void> {
  house().onSaved();
  house().tell(device, subjects);
  await refold(subjects);
  askPersistence().catch((trouble: unknown) => report("asking to keep storage", trouble));
}

function troubleKey(trouble: unknown): TroubleKey {
  if (!(trouble instanceof DOMException)) {
    report("saving", trouble);
    return "trouble.storage";
  }
  return trouble.name === "QuotaExceededError" ? "trouble.storage_full" : "trouble.storage";
}
