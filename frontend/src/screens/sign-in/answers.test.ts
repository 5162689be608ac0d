import { expect, test } from "vitest";
import { FIELD_REFUSED, JOIN_REFUSED, SIGN_IN_REFUSED } from "../../text/sign_in.ts";
import { asksWho, keptOf, missing, NO_ANSWERS, refused, reopened } from "./answers.ts";

test("joining asks for the code first, signing in for the login", () => {
  expect(missing("join", NO_ANSWERS, "")?.field).toBe("join_code");
  expect(missing("sign_in", NO_ANSWERS, "")?.field).toBe("login");
  expect(missing("sign_in", { ...NO_ANSWERS, login: "ama@upper-lane" }, "")?.field).toBe(
    "passphrase",
  );
});

test("a code of one member says who it is, so only a passphrase is asked", () => {
  const own = { ...NO_ANSWERS, code: " 4cd-efg" };

  expect(asksWho("join", own)).toBe(false);
  expect(missing("join", own, "")?.field).toBe("passphrase");
  expect(missing("join", own, "a spoon of thyme")).toBeNull();
  expect(missing("sign_in", own, "a spoon of thyme")?.field).toBe("login");
});

test("a code for somebody new asks for name and login", () => {
  const fresh = { ...NO_ANSWERS, code: "ACD EFG" };

  expect(asksWho("join", fresh)).toBe(true);
  expect(missing("join", fresh, "a spoon of thyme")?.field).toBe("name");
  expect(missing("join", { ...fresh, name: "Ama" }, "a spoon of thyme")?.field).toBe("login");
});

test("the form is left and opened again with login and name, never with a code", () => {
  const typed = { login: "ama@upper-lane", name: "Ama", code: "ACDEFGHJKM" };

  expect(reopened(keptOf("join", typed))).toEqual({
    way: "join",
    typed: { login: "ama@upper-lane", name: "Ama", code: "" },
  });
});

test.each([null, 7, "x", [], { login: 7 }])("a form kept as %j opens empty", (kept) => {
  expect(reopened(kept)).toEqual({ way: null, typed: NO_ANSWERS });
});

test("a wrong passphrase is said beside it", () => {
  const answer = { code: "not_authenticated", detail: "", field: null };

  expect(refused("sign_in", answer)).toEqual({
    field: "passphrase",
    sentence: SIGN_IN_REFUSED.not_authenticated,
  });
});

test("a used code is said beside the code", () => {
  const answer = { code: "not_authenticated", detail: "", field: "join_code" };

  expect(refused("join", answer)).toEqual({
    field: "join_code",
    sentence: JOIN_REFUSED.not_authenticated,
  });
});

test("a field the server names gets its own sentence", () => {
  expect(refused("join", { code: "unreadable", detail: "", field: "login" })).toEqual({
    field: "login",
    sentence: FIELD_REFUSED.login,
  });
});

test("without signal nothing is blamed on a field", () => {
  expect(refused("join", { code: "no_signal", detail: "", field: null })).toEqual({
    field: "",
    sentence: JOIN_REFUSED.no_signal,
  });
});
