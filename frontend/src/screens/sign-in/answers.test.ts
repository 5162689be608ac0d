import { expect, test } from "vitest";
import { FIELD_REFUSED, JOIN_REFUSED, SIGN_IN_REFUSED } from "../../text/sign_in.ts";
import { missing, NO_ANSWERS, refused } from "./answers.ts";

test("joining asks for the code first, signing in for the login", () => {
  expect(missing("join", NO_ANSWERS, "")?.field).toBe("join_code");
  expect(missing("sign_in", NO_ANSWERS, "")?.field).toBe("login");
  expect(missing("sign_in", { ...NO_ANSWERS, login: "ama@upper-lane" }, "")?.field).toBe(
    "passphrase",
  );
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
