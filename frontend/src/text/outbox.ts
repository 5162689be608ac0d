/** Words of the outbox: what waits on this phone, what is kept aside, and the phone itself. */
import { figure } from "./numbers.ts";

export const OUTBOX = {
  where: "Outbox",
  title: "On this phone",
  bench: "Hand over",
  hand_over: "Hand over now",
  nobody: "Nobody is signed in here.",
  since: (moment: string) => `oldest since ${moment}`,
  last_heard: (moment: string) => `server heard ${moment}`,
  never_heard: "server not heard yet",
  no_answer: "The server did not answer. Trying again by itself.",
  no_signal: "No signal. Everything is kept on this phone.",
  must_upgrade: "A newer version is needed to fetch what is new. Entries are still handed over.",
  must_sign_in: "The server asks you to sign in again. Entries are kept.",
  sign_in_again: "Sign in again",
  clock: (minutes: string, isSlow: boolean) =>
    `This phone's clock is ${minutes} min ${isSlow ? "slow" : "fast"}. Set it; entries are kept.`,
  own: "Your entries waiting",
  own_none: "Nothing of yours waits here.",
  others: "Others on this phone",
  waits: (count: number) => `${figure(String(count))} waiting`,
  aside: "Needs attention",
  aside_why: "Handed over, but outside the record until a coordinator decides.",
  phone: "This phone",
  person: "Person",
  change_person: "Change person",
  cooperative: "Cooperative",
  mark: "Mark in lot codes",
  storage: "Storage",
  storage_kept: "kept by the browser",
  storage_not_kept: "the browser may clear it",
  storage_unknown: "not asked yet",
  storage_hint: "Install the app to the home screen: then the browser keeps its storage.",
  version: "Version",
  update: "Take the new version",
  update_waits: "A new version is here. It comes in when no form is half filled.",
  light: "Light",
  sign_out: "Sign out",
  leave_asks: "Sign out of this phone?",
  leave_why: "The record leaves this phone. Signing in again needs signal.",
  sign_out_asks: (count: number) =>
    `${figure(String(count))} ${count === 1 ? "entry waits" : "entries wait"} here. Hand over first.`,
  sign_out_why: "Signing out takes your entries off this phone. Here they would be lost.",
  stay: "Stay signed in",
};

export const LIGHTS = [
  { value: "phone", word: "As the phone" },
  { value: "kitchen", word: "Kitchen" },
  { value: "evening", word: "Evening" },
  { value: "sun", word: "Sun" },
] as const;

/** What an entry is, in a word or two. */
export const KINDS_SAID: Record<string, string> = {
  cooperative_defined: "Cooperative set up",
  cooperative_changed: "Cooperative changed",
  place_defined: "Place set up",
  place_changed: "Place changed",
  material_defined: "Material set up",
  material_changed: "Material changed",
  source_defined: "Source set up",
  source_changed: "Source changed",
  recipient_defined: "Business set up",
  recipient_changed: "Business changed",
  instrument_defined: "Instrument set up",
  instrument_changed: "Instrument changed",
  recipe_published: "Recipe version",
  receipt: "Receipt",
  price_paid: "Price paid",
  topped_up: "Poured together",
  batch_started: "Batch started",
  laid_out: "Laid out",
  weigh_in: "Weighed in",
  step_done: "Step done",
  output: "Packed",
  loss: "Loss",
  batch_finished: "Batch finished",
  transfer: "Moved",
  dispatch: "Sent to a business",
  sale: "Sale",
  return: "Return",
  count: "Count",
  correction: "Correction",
  void: "Void",
  finding_settled: "Finding settled",
  note: "Note",
};

/** Why an entry is kept aside, in one sentence with what to do. */
export const ASIDE: Record<string, string> = {
  mismatch: "The server has another entry under this number. Show both to your coordinator.",
  unreadable: "The server could not read it. Show it to your coordinator.",
  unknown_kind: "The server does not know this kind of entry. Ask for an update.",
  wrong_author: "It was written by somebody else than who handed it over.",
  not_a_member: "Its author is no longer a member. A coordinator decides.",
  role: "Its author may not write this kind. A coordinator decides.",
  revoked_device: "It comes from a phone that was signed off. A coordinator decides.",
  too_large: "It is too large to hand over. It stays here and is tried again.",
};

export const ASIDE_OTHER = "The server keeps it aside. A coordinator decides.";
