/** What screens are given and give back. */
import type { Entry, MemberOfPhone } from "../store/rows.ts";

export type { AttentionRow, Body, Entry, Json } from "../store/rows.ts";

/** A person can put it right: `key` names the sentence, `field` the place (`amount.unit`). */
export interface Refusal {
  key: string;
  field?: string;
  [detail: string]: string | undefined;
}

/** The world failed: the key of one sentence. What was typed stays typed. */
export type TroubleKey = "trouble.storage_full" | "trouble.storage" | "trouble.nobody";

export type Saved = { saved: Entry } | { refusal: Refusal } | { trouble: TroubleKey };

/** A sheet as a screen shows it. */
export interface Shown<T> {
  subject: string;
  state: T;
  is_open: boolean;
  /** Who added it up: this phone, the server, or the server with own unsent entries on top. */
  from: "phone" | "server" | "server_and_own";
  /** Own entries about it that are not handed over yet. */
  waiting: number;
}

export interface Current {
  device: string;
  mark: string;
  member: MemberOfPhone;
  cooperative: { id: string; handle: string; name: string };
}

/** Somebody known on this phone; of another person one sees only how much waits (R60). */
export interface Person {
  device: string;
  member: MemberOfPhone;
  cooperative: { id: string; handle: string; name: string };
  waiting: number;
  must_sign_in: boolean;
}
