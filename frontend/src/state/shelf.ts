/** The sheets of the person on the screen, in memory, each a signal; folded anew when touched. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import { metaOf } from "../store/meta.ts";
import { type HeldAbout, heldAbout, heldSubjects, sheetRows } from "../store/reads.ts";
import type { EntryRow, SheetRow } from "../store/rows.ts";
import { takeInAbout } from "../sync/about.ts";
import { current, deviceDb, house, report, withDb } from "./house.ts";
import { adding } from "./lazy.ts";
import type { Shown } from "./types.ts";

/** True until the first pull has been taken in whole: totals are incomplete (R40). */
export const isStillLoading = signal(false);
/** True while what this phone holds is being added up for the first time: own work may be missing. */
export const isAddingUp = signal(false);

type Slot = Signal<Shown<object> | null>;

const slots = new Map<string, Slot>();
const subjectsByType = new Map<string, Signal<readonly string[]>>();
const lists = new Map<string, ReadonlySignal<Shown<object>[]>>();
/** What is to be folded, the most urgent first. */
let dirty: string[] = [];
let isDraining = false;
/** Whose sheets stand on the shelf. */
let shelfOf: string | undefined;
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

/**
 * Fills the shelf for the person on the screen: at once with the sheets as the server sent them,
 * then with what this phone adds up itself. Another person's sheets are taken away first; one's
 * own stay on the screen meanwhile, because a hand may be typing on one of them.
 */
export async function loadShelf(): Promise<void> {
  dirty = [];
  askedFor.clear();
  const device = current.value?.device;
  if (device !== shelfOf) takeAway(() => true);
  shelfOf = device;
  if (device === undefined) return;
  const db = await deviceDb(device);
  const [rows, subjects, meta] = await Promise.all([sheetRows(db), heldSubjects(db), metaOf(db)]);
  if (current.value?.device !== device) return;
  isStillLoading.value = !meta.is_whole;
  const toFold = new Set(subjects);
  const held = new Set([...toFold, ...rows.map((row) => row.subject)]);
  batch(() => {
    takeAway((subject) => !held.has(subject));
    put(rows.filter((row) => !toFold.has(row.subject) || !isShown(row.subject)).map(asSent));
    isAddingUp.value = true;
  });
  void refold(subjects).then(() => {
    isAddingUp.value = false;
  });
}

function isShown(subject: string): boolean {
  return slot(subject).peek() !== null;
}

function takeAway(isGone: (subject: string) => boolean): void {
  batch(() => {
    for (const [subject, known] of slots) if (isGone(subject)) known.value = null;
    for (const subjects of subjectsByType.values()) {
      subjects.value = subjects.peek().filter((subject) => !isGone(subject));
    }
  });
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
  const [held, { holdsAll }] = await Promise.all([
    withDb((db) => heldAbout(db, subject)),
    adding(),
  ]);
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
  const { shouldAsk, shownOf } = await adding();
  const held = await heldAbout(await deviceDb(device), subject);
  if (current.value?.device !== device) return;
  const shown = shownOf(held, device);
  if (shown === null) slot(subject).value = null;
  else put([shown]);
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

function asSent(sheet: SheetRow): Shown<object> {
  const { subject, state, is_open } = sheet;
  return { subject, state, is_open, from: "server", waiting: 0 };
}

/** Puts sheets on the shelf, each type's list touched once. */
function put(shown: readonly Shown<object>[]): void {
  const fresh = new Map<string, string[]>();
  for (const one of shown) {
    const known = slot(one.subject);
    if (known.peek() === null) {
      const type = one.subject.slice(0, one.subject.indexOf(":"));
      const others = fresh.get(type);
      if (others === undefined) fresh.set(type, [one.subject]);
      else others.push(one.subject);
    }
    // What reads alike keeps its place on the screen: no flicker when own entries come back (R41).
    if (JSON.stringify(known.peek()) !== JSON.stringify(one)) known.value = one;
  }
  for (const [type, subjects] of fresh) {
    const known = subjectsOf(type);
    known.value = [...new Set([...known.peek(), ...subjects])].sort();
  }
}

function subjectsOf(type: string): Signal<readonly string[]> {
  let known = subjectsByType.get(type);
  if (known === undefined) {
    known = signal<readonly string[]>([]);
    subjectsByType.set(type, known);
  }
  return known;
}
