/** Checks the budgets of script (first screen, each screen, all) and that no files need each other. */
import { readdirSync, readFileSync } from "node:fs";
import { brotliCompressSync } from "node:zlib";
import { chunkOf, TASKS } from "./chunks.ts";

const BUILT = new URL("../dist/", import.meta.url);
const SOURCES = new URL("../src/screens/", import.meta.url);
const KB = 1000;
const FIRST_SCREEN_MAX = 40 * KB;
const SCREEN_MAX = 6 * KB;
/**
 * The road: every script that takes a phone from delivery to buyer. Sign in, today, set up,
 * receive, start, lay out, weigh in, step, finish, label, stock, lot, stall, dispatch, trace,
 * outbox. It counts whole files, so what a screen of the road says of costs or holds is in it.
 * Not in it is what is fetched when somebody asks for it: the tasks below, writing recipes among
 * them, `judging`, the folds of their entries (checks of instruments, fill checks, logs of
 * temperature, practice, costs), `correcting` their numbers, and `reminders` of timers and checks. No
 * file of the road may import one of these before it can run.
 */
const ROAD_MAX = 150 * KB;
const BESIDE_THE_ROAD = [
  "judging",
  "reminders",
  "correcting",
  "fills",
  "holds",
  "instruments",
  "training",
  "charts",
  "money",
  "heat",
  "loggers",
  "sums",
  "bench",
  "recipe",
];
const ALL_MAX = 290 * KB;
/** Fetched with the first sheet that needs it, behind the screen that shows it. */
const JUDGING_MAX = 18 * KB;
/** Forms of their own beyond the first that one screen draws: seven sums at the bench, a log kept and corrected. */
const FORMS_MORE: Readonly<Record<string, number>> = { sums: 6, heat: 1 };
const TABLES_MAX = 40 * KB;
/** The worker is fetched by itself and nobody waits for it. */
const WORKER_MAX = 16 * KB;
const TABLE_CHUNK = /tables/;

interface Chunk {
  file: string;
  src?: string;
  isEntry?: boolean;
  imports?: string[];
  dynamicImports?: string[];
}

const chunks = JSON.parse(readFileSync(new URL("budget.json", BUILT), "utf8")) as Record<
  string,
  Chunk
>; // written by Vite itself a moment ago

const scripts = new Map<string, number>();
for (const chunk of Object.values(chunks)) {
  if (chunk.file.endsWith(".js")) scripts.set(chunk.file, compressedBytes(chunk.file));
}

const entryKey = keyWhere((chunk) => chunk.isEntry === true);
const first = reachedFrom(entryKey);
const firstScreenKey = keyWhere((chunk) => /screens\/today\/TodayScreen/.test(chunk.src ?? ""));
for (const key of reachedFrom(firstScreenKey)) first.add(key);

const lines: { name: string; bytes: number; most: number }[] = [
  { name: "first screen", bytes: sum(first), most: FIRST_SCREEN_MAX },
  { name: "tables", bytes: sum(new Set(Object.keys(chunks).filter(isTable))), most: TABLES_MAX },
  { name: "worker", bytes: compressedBytes("sw.js"), most: WORKER_MAX },
  { name: "the road", bytes: sum(allBut(BESIDE_THE_ROAD)), most: ROAD_MAX },
  { name: "judging", bytes: sum(filesOf("judging")), most: JUDGING_MAX },
  { name: "all scripts", bytes: sum(allBut([])), most: ALL_MAX },
];
const screens = readdirSync(SOURCES, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith("Screen.tsx"))
  .map((path) => ({ path, task: chunkOf(`/src/screens/${path}`) }));
for (const { path, task } of screens) {
  if (task !== null) continue;
  const key = keyWhere(({ src }) => src?.endsWith(path) === true);
  lines.push({ name: path, bytes: sum(new Set([key])), most: SCREEN_MAX });
}
for (const task of TASKS) {
  const key = keyWhere(({ file }) => file.startsWith(`assets/${task}-`) && file.endsWith(".js"));
  const inIt = screens.filter((each) => each.task === task).length + (FORMS_MORE[task] ?? 0);
  const name = `${task}, ${inIt} screens`;
  lines.push({ name, bytes: sum(new Set([key])), most: inIt * SCREEN_MAX });
}

let isOver = false;
for (const { name, bytes, most } of lines) {
  const verdict = bytes > most ? "over" : "within";
  isOver ||= bytes > most;
  process.stdout.write(
    `${verdict.padEnd(7)} ${(bytes / KB).toFixed(1).padStart(6)} of ${most / KB} kB  ${name}\n`,
  );
}
const ring = Object.keys(chunks).find((key) => importsOf(key).some((next) => reaches(next, key)));
if (ring !== undefined) {
  // What runs first would ask for what is not there yet, and the app would not come up.
  process.stdout.write(`over    files import each other in a ring: ${ring}\n`);
}
const drawn = besideInRoad();
if (drawn !== undefined) process.stdout.write(`over    the road draws in ${drawn}\n`);
process.exit(isOver || ring !== undefined || drawn !== undefined ? 1 : 0);

function importsOf(key: string): string[] {
  return chunks[key]?.imports ?? [];
}

function reaches(from: string, to: string): boolean {
  return reachedFrom(from, new Set(), true).has(to);
}

function compressedBytes(file: string): number {
  return brotliCompressSync(readFileSync(new URL(file, BUILT))).byteLength;
}

/** Every script but tables and those of some tasks. */
function allBut(tasks: readonly string[]): Set<string> {
  const leftOut = new Set(tasks.flatMap((task) => [...filesOf(task)]));
  return new Set(Object.keys(chunks).filter((key) => !isTable(key) && !leftOut.has(key)));
}

/** A file beside the road that a file of the road cannot run without. */
function besideInRoad(): string | undefined {
  const beside = new Set(BESIDE_THE_ROAD.flatMap((task) => [...filesOf(task)]));
  return [...allBut(BESIDE_THE_ROAD)].flatMap(importsOf).find((key) => beside.has(key));
}

function filesOf(task: string): Set<string> {
  return new Set(
    Object.keys(chunks).filter((key) => chunks[key]?.file.startsWith(`assets/${task}-`)),
  );
}

function keyWhere(isIt: (chunk: Chunk) => boolean): string {
  return Object.entries(chunks).find(([, chunk]) => isIt(chunk))?.[0] ?? "";
}

function isTable(key: string): boolean {
  return TABLE_CHUNK.test(key);
}

/** A chunk and everything it imports before it can run; what is loaded later is left out. */
function reachedFrom(key: string, reached = new Set<string>(), withTables = false): Set<string> {
  if (chunks[key] === undefined || reached.has(key)) return reached;
  if (isTable(key) && !withTables) return reached;
  reached.add(key);
  for (const imported of importsOf(key)) reachedFrom(imported, reached, withTables);
  return reached;
}

function sum(keys: Set<string>): number {
  const files = new Set([...keys].map((key) => chunks[key]?.file ?? ""));
  return [...files].reduce((total, file) => total + (scripts.get(file) ?? 0), 0);
}
