/** The sheets of the person on the screen, in memory, each a signal; folded anew when touched. */
import { batch, computed, type ReadonlySignal, type Signal, signal } from "@preact/signals";
import { typeIn } from "../calc/subjects.ts";
import { metaOf } from "../store/meta.ts";
import { type HeldAbout, heldAbout, heldSubjects, sheetRows } from "../store/reads.ts";
import type { EntryRow, SheetRow } from "../store/rows.ts";
import { takeInAbout } from "../sync/about.ts";
import { handsResting, noLongerWait } from "./hands.ts";
import { current, deviceDb, house, report, withDb } from "./house.ts";
import { adding, judging } from "./lazy.ts";
import type { Shown } from "./types.ts";
import { refreshUses } from "./uses.ts";

/** True until the first pull has been taken in whole: totals are incomplete (R40). */
export const isStillLoading = signal(false);
/** True while what this phone holds is being added up for the first time: own work may be missing. */
export const isAddingUp = signal(false);

type Slot = Signal<Shown<object> | null>;

/** Sheets folded in one go before a screen is drawn anew, where nobody waits for one of them. */
const FOLDED_AT_ONCE = 25;

const slots = new Map<string, Slot>();
const subjectsByType = new Map<string, Signal<readonly string[]>>();
const lists = new Map<string, ReadonlySignal<Shown<object>[]>>();
/** Whose sheets stand here. */
let owner: string | null = null;
/** What is to be folded, the most urgent first, and who waits for it. */
let dirty: string[] = [];
/** Which subjects were folded with which other one beside them. */
const leaning = new Map<string, Set<string>>();
const waiters = new Map<string, (() => void)[]>();
let draining: Promise<void> | null = null;
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
 * then with what this phone adds up itself. What another person saw is gone first.
 */
export async function loadShelf(): Promise<void> {
  const device = current.value?.device ?? null;
  dirty = dirty.filter((subject) => waiters.has(subject)); // somebody waits for these
  askedFor.clear();
  if (owner !== device) clear(() => true);
  owner = device;
  const counted = refreshUses();
  if (device === null) return counted;
  const db = await deviceDb(device);
  const [rows, held, meta] = await Promise.all([sheetRows(db), heldSubjects(db), metaOf(db)]);
  await counted;
  if (owner !== device) return;
  const holding = new Set(held);
  const kept = new Set([...held, ...rows.map((row) => row.subject)]);
  batch(() => {
    isStillLoading.value = !meta.is_whole;
    isAddingUp.value = true;
    clear((subject) => !kept.has(subject));
    // A sheet that is added up here keeps its place until that is done: nothing jumps.
    put(
      rows
        .filter((row) => !holding.has(row.subject) || slot(row.subject).peek() === null)
        .map(asSent),
    );
  });
  dirty = [...dirty, ...held];
  void startDraining().then(() => {
    isAddingUp.value = false;
  });
}

/** Folds subjects anew, before any others. Resolves when they are shown. */
export async function refold(subjects: readonly string[]): Promise<void> {
  const urgent = new Set(subjects);
  dirty = [...urgent, ...dirty.filter((subject) => !urgent.has(subject))];
  const shown = [...urgent].map(
    (subject) =>
      new Promise<void>((resolve) => {
        waiters.set(subject, [...(waiters.get(subject) ?? []), resolve]);
      }),
  );
  noLongerWait();
  void startDraining();
  // A pull that counted anew names the instrument.
  if (subjects.some((subject) => typeIn(subject) === "instrument")) await refreshUses();
  await Promise.all(shown);
}

/** Entries held about a subject. */
export async function heldRows(subject: string): Promise<EntryRow[]> {
  return (await withDb((db) => heldAbout(db, subject)))?.rows ?? [];
}

/** Asks the server for all entries about a subject, once, if this phone does not hold them. */
export async function fetchAbout(subject: string): Promise<void> {
  const held = await withDb((db) => heldAbout(db, subject));
  if (held === null || held.sheet === null || (await addingFor(held)).holdsAll(held)) return;
  await askAbout(held);
}

/** Adding up, once the folds are here that these entries need. */
async function addingFor({ subject, rows }: HeldAbout): ReturnType<typeof adding> {
  const added = await adding();
  if (added.needsJudging(subject, rows)) await judging();
  return added;
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

function startDraining(): Promise<void> {
  draining ??= drain().finally(() => {
    draining = null;
    if (dirty.length > 0) void startDraining(); // came in after the last look, before this one
  });
  return draining;
}

/** Never one subject twice at a time, so that of two readings the later one is shown. */
async function drain(): Promise<void> {
  let ready: Shown<object>[] = [];
  while (dirty.length > 0 || waiters.size > 0) {
    if (waiters.size === 0) await handsResting();
    const next = takeNext();
    const shown = await Promise.all(next.subjects.map(foldedSafely));
    ready.push(...shown.filter((one) => one !== null));
    if (next.waiting.length === 0 && dirty.length > 0 && ready.length < FOLDED_AT_ONCE) continue;
    const toShow = ready;
    ready = [];
    batch(() => put(toShow));
    for (const resolve of next.waiting) resolve();
  }
}

/** All that somebody waits for, to be shown at once; else the next one. */
function takeNext(): { subjects: string[]; waiting: (() => void)[] } {
  if (waiters.size === 0) return { subjects: dirty.splice(0, 1), waiting: [] };
  const subjects = dirty.filter((subject) => waiters.has(subject));
  dirty = dirty.filter((subject) => !waiters.has(subject));
  const waiting = [...waiters.values()].flat();
  waiters.clear();
  return { subjects, waiting };
}

async function foldedSafely(subject: string): Promise<Shown<object> | null> {
  try {
    return await foldedNow(subject);
  } catch (defect) {
    // The old sheet stays on the screen; the entry is saved all the same.
    report(`folding ${typeIn(subject)}`, defect);
    return null;
  }
}

async function foldedNow(subject: string): Promise<Shown<object> | null> {
  const device = owner;
  if (device === null) return null;
  const held = await heldAbout(await deviceDb(device), subject);
  const { leanedOnBy, shouldAsk, shownOf } = await addingFor(held);
  if (owner !== device) return null;
  if (shouldAsk(held, device)) void mend(held);
  const shown = shownOf(held, device, besideOf(subject, leanedOnBy(held.rows)));
  if (shown === null) clear((one) => one === subject);
  return shown;
}

/** What stands on the shelf of the subjects this one leans on; it follows when they change. */
function besideOf(subject: string, leanedOn: readonly string[]): Map<string, object> {
  const beside = new Map<string, object>();
  for (const other of leanedOn) {
    leaning.set(other, (leaning.get(other) ?? new Set()).add(subject));
    const state = slot(other).peek()?.state;
    if (state !== undefined) beside.set(other, state);
  }
  return beside;
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
  return { subject, state, is_open, from: "server", waiting: 0, is_newer: false };
}

/** Puts sheets on the shelf, each type's list touched once. */
function put(shown: readonly Shown<object>[]): void {
  const fresh = new Map<string, string[]>();
  for (const one of shown) {
    const known = slot(one.subject);
    if (known.peek() === null) {
      const type = typeIn(one.subject);
      const others = fresh.get(type);
      if (others === undefined) fresh.set(type, [one.subject]);
      else others.push(one.subject);
    }
    // What reads alike keeps its place on the screen: no flicker when own entries come back (R41).
    if (JSON.stringify(known.peek()) === JSON.stringify(one)) continue;
    known.value = one;
    dirty.push(...(leaning.get(one.subject) ?? []));
  }
  for (const [type, subjects] of fresh) {
    const known = subjectsOf(type);
    known.value = [...new Set([...known.peek(), ...subjects])].sort();
  }
}

/** Takes sheets off the shelf. */
function clear(isGone: (subject: string) => boolean): void {
  batch(() => {
    for (const [subject, known] of slots) {
      if (known.peek() !== null && isGone(subject)) known.value = null;
    }
    for (const subjects of subjectsByType.values()) {
      if (subjects.peek().some(isGone)) {
        subjects.value = subjects.peek().filter((subject) => !isGone(subject));
      }
    }
  });
}

function subjectsOf(type: string): Signal<readonly string[]> {
  let known = subjectsByType.get(type);
  if (known === undefined) {
    known = signal<readonly string[]>([]);
    subjectsByType.set(type, known);
  }
  return known;
}
