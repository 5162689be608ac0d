/** What is typed to come in, what is still missing, and what a refusal means beside which field. */
import { isForMember, type SignedIn } from "../../state/session.ts";
import type { Json } from "../../state/types.ts";
import {
  ANY_TROUBLE,
  FIELD_REFUSED,
  JOIN_REFUSED,
  SIGN_IN,
  SIGN_IN_REFUSED,
} from "../../text/sign_in.ts";
import type { Hindrance } from "../common/sentences.ts";

/** By login and passphrase, or by a one-time code. */
export type Way = "sign_in" | "join";

/** Kept as typed; the passphrase alone never leaves the screen. */
export interface Answers {
  [field: string]: string;
  login: string;
  code: string;
  name: string;
}

export const NO_ANSWERS: Answers = { login: "", code: "", name: "" };

/** Whether name and login are to be typed: by somebody new, not where the code says who it is. */
export function asksWho(way: Way, typed: Answers): boolean {
  return way === "join" && !isForMember(typed.code);
}

/** What is kept across a reload; the passphrase never is, nor a code that opens once. */
export function keptOf(way: Way, typed: Answers): { [field: string]: string } {
  return { way, login: typed.login, name: typed.name };
}

/** The form as it was left; `way` is null where nothing was. */
export function reopened(kept: Json): { way: Way | null; typed: Answers } {
  const fields = typeof kept === "object" && kept !== null && !Array.isArray(kept) ? kept : {};
  const text = (name: string) => {
    const value = fields[name];
    return typeof value === "string" ? value : "";
  };
  const way = text("way") === "join" ? "join" : text("way") === "" ? null : "sign_in";
  return { way, typed: { ...NO_ANSWERS, login: text("login"), name: text("name") } };
}

/** The first thing still to type: its field and what to do. */
export function missing(way: Way, typed: Answers, passphrase: string): Hindrance | null {
  const needed: Hindrance[] = [];
  if (way === "join" && typed.code.trim() === "") {
    needed.push({ field: "join_code", sentence: SIGN_IN.type_code });
  }
  if (asksWho(way, typed) && typed.name.trim() === "") {
    needed.push({ field: "name", sentence: SIGN_IN.type_name });
  }
  const isLoginAsked = way === "sign_in" || asksWho(way, typed);
  if (isLoginAsked && typed.login.trim() === "") {
    needed.push({ field: "login", sentence: SIGN_IN.type_login });
  }
  if (passphrase === "") needed.push({ field: "passphrase", sentence: SIGN_IN.type_passphrase });
  return needed[0] ?? null;
}

/** One sentence for a refusal, beside the field the server named or that the code is about. */
export function refused(way: Way, answer: SignedIn): Hindrance | null {
  if ("signed_in" in answer) return null;
  const { code, field } = answer;
  const said = FIELD_REFUSED[field ?? ""];
  if (field !== null && said !== undefined) return { field, sentence: said };
  const sentence = (way === "join" ? JOIN_REFUSED : SIGN_IN_REFUSED)[code] ?? ANY_TROUBLE;
  const asked = way === "join" ? "join_code" : "passphrase";
  return { field: code === "not_authenticated" ? asked : "", sentence };
}
