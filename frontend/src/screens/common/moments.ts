/** Moments as a clock on the wall shows them, in the cooperative's zone. */
import { instantOf } from "../../calc/shelf_life.ts";
import { utcOffsetMin } from "../../entries/envelope.ts";
import { clockWords } from "../../text/numbers.ts";
import { dayOf, zone } from "./edge.ts";

const NOON = "12:00"; // of a day whose hour nobody knows

/** A day and a clock as they are typed. */
export interface Wall {
  day: string;
  clock: string;
}

/** The instant of a written moment. */
export function instantAt({ day, clock }: Wall): string {
  const wall = `${day}T${clock || NOON}`;
  const about = utcOffsetMin(`${wall}:00.000Z`, zone());
  return instantOf(wall, utcOffsetMin(instantOf(wall, about), zone()));
}

/** What the wall showed at an instant. */
export function wallAt(at: string): Wall {
  return { day: dayOf(at), clock: clockWords(at, zone()).padStart(NOON.length, "0") };
}

/** What a correction makes of the moment of an entry; `why` is null where it can be saved. */
export function movedTo(
  typed: { readonly day: string | null; readonly clock: string | null },
  by: { readonly happened_at: string; readonly now_ms: number },
): { wall: Wall; at: string; why: "no_day" | "same" | "to_come" | null } {
  const was = wallAt(by.happened_at);
  const wall = { day: typed.day ?? was.day, clock: typed.clock ?? was.clock };
  if (wall.day === "") return { wall, at: by.happened_at, why: "no_day" };
  const at = instantAt(wall);
  const isSame = wall.day === was.day && wall.clock === was.clock;
  return { wall, at, why: isSame ? "same" : Date.parse(at) > by.now_ms ? "to_come" : null };
}
