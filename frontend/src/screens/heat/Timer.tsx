/** The running timer: since when, how long, when the next reading is asked for. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { Notice } from "../../parts/Plain.tsx";
import { HEAT } from "../../text/heat.ts";
import { durationWords } from "../../text/heat_results.ts";
import { clockWords } from "../../text/numbers.ts";
import { nowMs, zone } from "../common/edge.ts";
import { dueMs as dueOf } from "../common/running_timers.ts";
import type { HeatTyped } from "./heat.ts";

const TICK_MS = 1000;
const LATE_S = 60; // later than this it is said how late

/** It needs no running program: began and rows are in the draft, the clock is the phone's. */
export function Timer({ typed }: { typed: HeatTyped }) {
  const now = useSignal(nowMs());
  const dueMs = dueOf(typed);
  const isDue = now.value >= dueMs;
  useEffect(() => {
    const timer = setInterval(() => {
      now.value = nowMs();
    }, TICK_MS);
    return () => clearInterval(timer);
  }, [now]);
  const goneS = Math.max(0, Math.floor((now.value - typed.timer_began_ms) / 1000));
  const lateS = Math.max(0, Math.floor((now.value - dueMs) / 1000));
  const clock = (ms: number) => clockWords(new Date(ms).toISOString(), zone());
  return (
    <>
      <p>
        {HEAT.timer.began(clock(typed.timer_began_ms))} {HEAT.timer.gone(durationWords(goneS))}{" "}
        {!isDue && HEAT.timer.next(clock(dueMs))}
      </p>
      {isDue && (
        <Notice isLive>
          {lateS < LATE_S || typed.at_s.length === 0
            ? HEAT.timer.now
            : HEAT.timer.late(durationWords(lateS - (lateS % LATE_S)))}
        </Notice>
      )}
    </>
  );
}
