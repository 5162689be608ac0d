/** Who is on the screen, who else uses this phone, and the ways in and out. */
import { computed, signal } from "@preact/signals";
import type { Current, Person, Refusal } from "./types.ts";

export const current = signal<Current | null>(null);
export const people = signal<Person[]>([]);
/** The server ended this session: capture goes on, the screen asks to sign in (R58). */
export const needsSignIn = computed(
  () => people.value.find((one) => one.device === current.value?.device)?.must_sign_in ?? false,
);

/** `code` is one of the wire's codes (not_authenticated, rate_limited ...) or `no_signal`. */
export type SignedIn = { signed_in: Current } | { refusal: Refusal } | { code: string };
export type SignedOut = { signed_out: true } | { waiting: number };

/** Signs in with `name@cooperative`: again on a known device, else as a new one. Needs signal. */
export declare function signIn(login: string, passphrase: string): Promise<SignedIn>;

/** Joins by a one-time code. Needs signal. */
export declare function join(answers: {
  join_code: string;
  name: string;
  login: string;
  passphrase: string;
}): Promise<SignedIn>;

/** Changes the person on this phone, without signal (R60). */
export declare function changePerson(device: string): Promise<void>;

/** Deletes this device from the phone when nothing waits; else says how much does (R61). */
export declare function signOut(): Promise<SignedOut>;

/** A one-time join code for a new member, or for a member who forgot a passphrase. Needs signal. */
export declare function makeJoinCode(
  roles: string[],
  member?: string,
): Promise<{ made: { code: string; expires_at: string } } | { code: string }>;
