/**
 * Timers of logs that run on this phone: each is a half-filled form, which outlives its screen and a
 * killed browser. Due ones are told on any screen, as long as the app is open.
 */
import { effect, signal } from "@preact/signals";
import { typedNumber } from "../../parts/typing.ts";
import { draftsBeginning } from "../../state/drafts.ts";
import { current } from "../../state/session.ts";
import { nowMs } from "./edge.ts";
import { sound } from "./sound.ts";
import { tremble } from "./touch.ts";

const TICK_MS = 1000;
const FORMS = "heat/";

/** What a form of a log says of its timer. */
export interface TimerForm {
  readonly how: string;
  readonly by: string;
  readonly timer_began_ms: number;
  readonly every_min: string;
  readonly at_s: readonly number[];
}

export interface RunningTimer extends TimerForm {
  readonly key: string;
  readonly batch: string;
  readonly step: string;
}

export const runningTimers = signal<readonly RunningTimer[]>([]);
/** The time by which timers are shown; it moves only while one runs. */
export const timersAt = signal(0);

/** When the timer asks next, in seconds since it began; at once for the first reading. */
export function nextDueS({ at_s, every_min }: Pick<TimerForm, "at_s" | "every_min">): number {
  const every = Math.max(Math.round(Number(typedNumber(every_min) ?? "0") * 60), 1);
  const last = at_s.reduce((most, each) => Math.max(most, each), -1);
  return last < 0 ? 0 : (Math.floor(last / every) + 1) * every;
}

export function dueMs(timer: TimerForm): number {
  return timer.timer_began_ms + nextDueS(timer) * 1000;
}

/** A form as it stands now; null for one that was saved. */
export function noteTimer(key: string, form: TimerForm | null): void {
  const others = runningTimers.value.filter((each) => each.key !== key);
  const own = form === null ? null : timerIn(key, form);
  if (own === null && others.length === runningTimers.value.length) return;
  runningTimers.value = own === null ? others : [...others, own];
}

/** Reads the forms of whoever is here, and tells each reading that is due, once. */
export function watchTimers(): () => void {
  const told = new Set<string>();
  const stopReading = effect(() => {
    if (current.value === null) runningTimers.value = [];
    else void readTimers();
  });
  const ticking = setInterval(() => {
    if (runningTimers.value.length === 0) return;
    timersAt.value = nowMs();
    for (const timer of runningTimers.value) {
      const due = dueMs(timer);
      if (timersAt.value < due || told.has(`${timer.key} ${due}`)) continue;
      told.add(`${timer.key} ${due}`);
      tremble(2);
      sound();
    }
  }, TICK_MS);
  return () => {
    stopReading();
    clearInterval(ticking);
  };
}

async function readTimers(): Promise<void> {
  const forms = [...(await draftsBeginning(FORMS))];
  timersAt.value = nowMs();
  const found = forms.flatMap(([key, typed]) => timerIn(key, typed) ?? []);
  // What its own screen has noted meanwhile is newer.
  const noted = new Set(runningTimers.value.map(({ key }) => key));
  runningTimers.value = [...runningTimers.value, ...found.filter(({ key }) => !noted.has(key))];
}

/** Of another shape is what an older version left. */
function timerIn(key: string, form: unknown): RunningTimer | null {
  if (typeof form !== "object" || form === null) return null;
  const { how, by, timer_began_ms, every_min, at_s } = form as Partial<TimerForm>; // as: looked at
  if (how !== "timer" || typeof timer_began_ms !== "number" || timer_began_ms <= 0) return null;
  if (!Array.isArray(at_s) || !at_s.every((each) => typeof each === "number")) return null;
  const [batch = "", step = ""] = key.slice(FORMS.length).split("/");
  const every = typeof every_min === "string" ? every_min : "";
  return { key, batch, step, how, by: by ?? "", timer_began_ms, every_min: every, at_s };
}
