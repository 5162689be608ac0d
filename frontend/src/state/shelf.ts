/** The sheets of the person on the screen, in memory, each a signal; folded anew when touched. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import { metaOf } from "../store/meta.ts";
import { type HeldAbout, heldAbout, heldSubjects, sheetRows } from "../store/reads.ts";
import type { EntryRow } from "../store/rows.ts";
import { takeInAbout } from "../sync/about.ts";
import { holdsAll, shouldAsk } from "./held.ts";
import { current, deviceDb, house, report, withDb } from "./house.ts";
import { shownOf } from "./shown.ts";
import type { Shown } from "./types.ts";

/** True until the first pull has been taken in whole: totals are incomplete (R40). */
export const isStillLoading = signal(false);

type Slot = Signal<Shown<object> | null>;

const slots = new Map<string, Slot>();
const subjectsByType = new Map<string, Signal<readonly string[]>>();
const lists = new Map<string, ReadonlySignal<Shown<object>[]>>();
/** What is to be folded, the most urgent first. */
let dirty: string[] = [];
let isDraining = false;
const askedFor = new Set<string>();

export function slot(subject: string): Slot {
  let known = slots.get(subject);
  if (known === undefined) {
    known = signal<Shown<object> | null>(null);
    slots.set(subject, known);
  }
  return known;
}

export function listOf(type: string): ReadonlySignal<Shown<object>[]> {
  let known = lists.get(type);
  if (known === undefined) {
    const subjects = subjectsOf(type);
    known = computed(() =>
      subjects.value.map((subject) => slot(subject).value).filter((shown) => shown !== null),
    );
    lists.set(type, known);
  }
  return known;
}

/** Empties the shelf and fills it for the person on the screen. */
export async function loadShelf(): Promise<void> {
  dirty = [];
  askedFor.clear();
  batch(() => {
    for (const known of slots.values()) known.value = null;
    for (const subjects of subjectsByType.values()) subjects.value = [];
  });
  const device = current.value?.device;
  if (device === undefined) return;
  const db = await deviceDb(device);
  const [rows, subjects, meta] = await Promise.all([sheetRows(db), heldSubjects(db), metaOf(db)]);
  if (current.value?.device !== device) return;
  isStillLoading.value = !meta.is_whole;
  batch(() => {
    for (const sheet of rows) put(sheet.subject, shownOf({ ...sheet, rows: [], sheet }, device));
  });
  await refold(subjects);
}

/** Folds subjects anew, before any that were asked for earlier. Resolves when they are done. */
export function refold(subjects: readonly string[]): Promise<void> {
  const urgent = new Set(subjects);
  dirty = [...urgent, ...dirty.filter((subject) => !urgent.has(subject))];
  const asked = Promise.all([...urgent].map((subject) => foldedNext(subject)));
  if (!isDraining) void drain();
  return asked.then(() => undefined);
}

/** Entries held about a subject. */
export async function heldRows(subject: string): Promise<EntryRow[]> {
  return (await withDb((db) => heldAbout(db, subject)))?.rows ?? [];
}

/** Asks the server for all entries about a subject, once, if this phone does not hold them. */
export async function fetchAbout(subject: string): Promise<void> {
  const held = await withDb((db) => heldAbout(db, subject));
  if (held === null || held.sheet === null || holdsAll(held)) return;
  await askAbout(held);
}

/** Once for each set of own entries that were confirmed and have no number yet. */
async function askAbout(held: HeldAbout): Promise<void> {
  const device = current.value?.device;
  const { subject } = held;
  const unnumbered = held.rows.filter((row) => row.seq === null && row.handed_over_ms !== null);
  const key = [subject, ...unnumbered.map((row) => row.id)].join(" ");
  if (device === undefined || askedFor.has(key)) return;
  askedFor.add(key);
  const { world } = house();
  const taken = await takeInAbout({ world, db: await deviceDb(device), device, subject });
  if (taken) await refold([subject]);
  else askedFor.delete(key);
}

const waitingForFold = new Map<string, (() => void)[]>();

function foldedNext(subject: string): Promise<void> {
  return new Promise((resolve) => {
    waitingForFold.set(subject, [...(waitingForFold.get(subject) ?? []), resolve]);
  });
}

/** One at a time, so that of two readings of a subject the later one is shown. */
async function drain(): Promise<void> {
  isDraining = true;
  for (let subject = dirty.shift(); subject !== undefined; subject = dirty.shift()) {
    const done = waitingForFold.get(subject) ?? [];
    waitingForFold.delete(subject);
    try {
      await foldOne(subject);
    } catch (defect) {
      // The old sheet stays on the screen; the entry is saved all the same.
      report(`folding ${subject.split(":")[0]}`, defect);
    }
    for (const resolve of done) resolve();
  }
  isDraining = false;
  for (const left of waitingForFold.values()) for (const resolve of left) resolve();
  waitingForFold.clear();
}

async function foldOne(subject: string): Promise<void> {
  const device = current.value?.device;
  if (device === undefined) return;
  const held = await heldAbout(await deviceDb(device), subject);
  if (current.value?.device !== device) return;
  put(subject, shownOf(held, device));
  if (shouldAsk(held, device)) void mend(held);
}

/** A half-known subject with entries of our own is asked for when there is signal. */
async function mend(held: HeldAbout): Promise<void> {
  try {
    await askAbout(held);
  } catch (trouble) {
    report("asking for entries", trouble);
  }
}

function put(subject: string, shown: Shown<object> | null): void {
  const known = slot(subject);
  // What reads alike keeps its place on the screen: no flicker when own entries come back (R41).
  if (JSON.stringify(known.peek()) !== JSON.stringify(shown)) known.value = shown;
  if (shown === null) return;
  const subjects = subjectsOf(subject.slice(0, subject.indexOf(":")));
  if (!subjects.peek().includes(subject)) subjects.value = [...subjects.peek(), subject].sort();
}

function subjectsOf(type: string): Signal<readonly string[]> {
  let known = subjectsByType.get(type);
  if (known === undefined) {
    known = signal<readonly string[]>([]);
    subjectsByType.set(type, known);
  }
  return known;
}
