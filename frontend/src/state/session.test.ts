import { beforeEach, describe, expect, test } from "vitest";
import { answer, DEVICE, OTHER_DEVICE } from "../../simulation/bench.ts";
import { type TestHouse, testHouse, welcome } from "../../simulation/house.ts";
import { devicesOf, setStanding } from "../store/phone.ts";
import type { WireRequest } from "../sync/world.ts";
import { house as standing } from "./house.ts";
import { waiting } from "./outbox.ts";
import { record } from "./record.ts";
import {
  changePerson,
  current,
  join,
  needsSignIn,
  people,
  refreshPeople,
  signIn,
  signOut,
} from "./session.ts";
import { sheetsOf } from "./sheets.ts";

const NOTE = { subject: "lot:JAR-1", says: "chipped" };
let house: TestHouse;

function wire(request: WireRequest) {
  const said = JSON.parse(request.body ?? "{}");
  if (request.path.endsWith("/session")) return welcome(request.device ?? "", said.login);
  if (said.passphrase === "wrong") {
    return answer(401, { code: "not_authenticated", detail: "They do not fit together." });
  }
  return said.login === "ben@hill"
    ? welcome(OTHER_DEVICE, "ben@hill", "member-ben")
    : welcome(DEVICE, said.login);
}

beforeEach(async () => {
  house = await testHouse(wire);
  await signIn("ama@hill", "a spoon of thyme");
});

describe("signing in", () => {
  test("makes this browser a device and shows its member", () => {
    expect(current.value).toMatchObject({ device: DEVICE, member: { login: "ama@hill" } });
    expect(people.value.map((one) => [one.member.login, one.waiting])).toEqual([["ama@hill", 0]]);
  });

  test("again is the same device, so that its outbox goes on", async () => {
    await record("note", NOTE);

    await signIn("Ama@hill ", "a spoon of thyme");

    expect(house.world.requests.at(-1)).toMatchObject({ path: "/api/v1/session", device: DEVICE });
    expect(waiting.value).toHaveLength(1);
  });

  test("that is refused says the server's code and sentence", async () => {
    expect(await signIn("cleo@hill", "wrong")).toEqual({
      code: "not_authenticated",
      detail: "They do not fit together.",
      field: null,
    });
    expect(current.value?.device).toBe(DEVICE);
  });

  test("without signal says so", async () => {
    house.world.wire = () => Promise.reject(new TypeError("network"));

    const said = { join_code: "1", name: "Cleo", login: "cleo", passphrase: "x" };

    expect(await join(said)).toMatchObject({ code: "no_signal" });
  });
});

describe("a phone of two members", () => {
  beforeEach(async () => {
    await record("note", NOTE);
    await signIn("ben@hill", "a spoon of thyme");
  });

  test("shows of the other only how much waits", () => {
    expect(current.value?.device).toBe(OTHER_DEVICE);
    expect(waiting.value).toEqual([]);
    expect(sheetsOf("lot").value).toEqual([]);
    expect(people.value.map((one) => [one.member.login, one.waiting])).toEqual([
      ["ama@hill", 1],
      ["ben@hill", 0],
    ]);
  });

  test("changes back without signal, with everything as it was", async () => {
    house.world.wire = () => Promise.reject(new TypeError("network"));

    await changePerson(DEVICE);

    expect(current.value?.member.login).toBe("ama@hill");
    expect(waiting.value).toHaveLength(1);
  });
});

describe("signing out", () => {
  test("is not done while something waits; it says how much", async () => {
    await record("note", NOTE);

    expect(await signOut()).toEqual({ waiting: 1 });
    expect(current.value?.device).toBe(DEVICE);
  });

  test("deletes this member's database at once; the cookie ends at the next contact", async () => {
    expect(await signOut()).toEqual({ signed_out: true });

    expect(current.value).toBeNull();
    const names = (await indexedDB.databases()).map((one) => one.name);
    expect(names).toEqual(["kitchenlog-phone"]);
    const rows = await devicesOf(standing().phone);
    expect(rows.map((row) => row.standing)).toEqual(["leaving"]);
  });
});

test("a session that is over asks to sign in and leaves everything else as it was", async () => {
  await record("note", NOTE);
  await setStanding(standing().phone, DEVICE, "over");

  await refreshPeople();

  expect(needsSignIn.value).toBe(true);
  expect(current.value?.device).toBe(DEVICE);
  expect(waiting.value).toHaveLength(1);
});
