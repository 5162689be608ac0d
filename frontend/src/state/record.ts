/** The one way an entry is made: parse, stamp, save, fold. */
import type { Body, Entry, Saved } from "./types.ts";

export interface RecordOptions {
  /** When it happened, if the person says otherwise than now: "YYYY-MM-DDTHH:MM:SS.mmmZ". */
  happened_at?: string;
}

/** Saves one entry. `saved` is answered only when it is on this phone for good (R5). */
export declare function record(kind: string, body: Body, options?: RecordOptions): Promise<Saved>;

/**
 * Writes a correction of the entry, or of the correction in force. With two corrections in
 * conflict pass the ids of both: this one stands instead of them.
 */
export declare function correct(
  entryId: string,
  newBody: Body,
  reason: string,
  insteadOf?: string[],
): Promise<Saved>;

/** Voids an entry at once ("slip"), or later with a reason. */
export declare function takeBack(entryId: string, reason?: string): Promise<Saved>;

/** An entry about a subject, as the rows of a screen show it. */
export interface HeldEntry {
  entry: Entry;
  /** Its number in the log, or null while it is on this phone only. */
  seq: number | null;
  is_waiting: boolean;
}

/** All held entries about a subject, in business order; asks the server for missing ones first. */
export declare function entriesAbout(subject: string): Promise<HeldEntry[]>;
