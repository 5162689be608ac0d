/** Words of signing in, joining and changing the person on this phone. */
import { figure } from "./numbers.ts";

export const SIGN_IN = {
  where: "kitchenlog",
  title_sign_in: "Who are you?",
  title_join: "Join your cooperative",
  ways: "How you come in",
  sign_in: "Sign in",
  join: "Join by code",
  login: "Login",
  login_hint: "Your name and the cooperative's, as ama@upper-lane.",
  own_login: "Login you choose",
  own_login_hint: "Small letters, digits, dot and dash.",
  passphrase: "Passphrase",
  new_passphrase: "Passphrase you choose",
  new_passphrase_hint: "At least 10 characters. A short sentence is easy to keep.",
  code: "Code",
  code_hint: "Your coordinator shows it. It works once and for 30 minutes.",
  code_says_who: "This code is yours: choose a new passphrase, nothing else is needed.",
  name: "Your name, as others know you",
  signal_once: "Signing in needs signal once. Afterwards this phone works without.",
  join_signal_once: "Joining needs signal once. Afterwards this phone works without.",
  known: "Known on this phone",
  bench: "Come in",
  asking: "Asking the server",
  type_login: "Type your login first",
  type_passphrase: "Type your passphrase first",
  type_code: "Type the code first",
  type_name: "Type your name first",
};

/** What a code of the wire means here, in one sentence with what to do. */
export const SIGN_IN_REFUSED: Record<string, string> = {
  not_authenticated: "Login and passphrase do not go together. Type both again.",
  rate_limited: "Too many tries. Wait a minute, then try again.",
  no_signal: "No signal reaches the server. Find signal and press again.",
  device_revoked: "This phone was signed off by a coordinator. Sign in as new.",
  forbidden: "The server does not let this phone in. Ask your coordinator.",
  upgrade_required: "This app is too old for the server. Reload it with signal.",
};

export const JOIN_REFUSED: Record<string, string> = {
  ...SIGN_IN_REFUSED,
  not_authenticated: "The code is wrong, used or over 30 minutes old. Ask for a new one.",
};

/** What is wrong with one field, where the server said which. */
export const FIELD_REFUSED: Record<string, string> = {
  login: "This login is taken or has other signs. Use small letters, digits, dot and dash.",
  name: "Write your name in at most 120 characters.",
  passphrase: "This passphrase is easy to guess. Choose at least 10 characters.",
  join_code: "The code is wrong, used or over 30 minutes old. Ask for a new one.",
};

export const ANY_TROUBLE = "The server did not answer. What you typed is kept; press again.";

export const PEOPLE = {
  where: "This phone",
  title: "Whose hands?",
  choose: "Known on this phone",
  none: "Nobody has signed in here yet.",
  now: "now",
  waiting: (count: number) => `${figure(String(count))} waiting`,
  must_sign_in: "must sign in again, entries are kept",
  another: "Somebody else signs in",
  calm: "Works without signal. Each person's entries stay their own.",
  bench: "Person on this phone",
};
