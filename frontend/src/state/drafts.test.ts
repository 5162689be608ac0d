import { beforeEach, describe, expect, test, vi } from "vitest";
import { DEVICE, OTHER_DEVICE } from "../../simulation/bench.ts";
import { type TestHouse, testHouse, welcome } from "../../simulation/house.ts";
import { draftOf } from "../store/drafts.ts";
import { dirtyDrafts, draft, draftsBeginning, writeDrafts } from "./drafts.ts";
import { deviceDb } from "./house.ts";
import { changePerson, signIn } from "./session.ts";

const KEY = "weigh-in/b1/2";
let house: TestHouse;

beforeEach(async () => {
  house = await testHouse(({ body }) =>
    body?.includes("ben") ? welcome(OTHER_DEVICE, "ben@hill", "member-ben") : welcome(DEVICE),
  );
  await signIn("ama@hill", "a spoon of thyme");
});

describe("a draft", () => {
  test("is written when the page goes, and offered to the next one", async () => {
    draft(KEY).save({ shown: "60." });

    await writeDrafts();

    expect(await draftOf(await deviceDb(DEVICE), KEY)).toEqual({ shown: "60." });
    expect(await draft(KEY).load()).toEqual({ shown: "60." });
  });

  test("is found by how its key begins, written or not", async () => {
    draft("recipe/1").save({ name: "Chutney" });
    draft("weigh-in/b1/9").save({ shown: "1" });
    await writeDrafts();
    draft("recipe/1").save({ name: "Apple chutney" });
    draft("recipe/2").save({ name: "Quince paste" });

    expect(await draftsBeginning("recipe/")).toEqual(
      new Map([
        ["recipe/1", { name: "Apple chutney" }],
        ["recipe/2", { name: "Quince paste" }],
      ]),
    );
    for (const key of ["recipe/1", "recipe/2", "weigh-in/b1/9"]) await draft(key).clear();
    expect(await draftsBeginning("recipe/")).toEqual(new Map());
  });

  test("is written soon, however fast one types on", async () => {
    const due: (() => void)[] = [];
    house.world.after = (_, callBack) => {
      due.push(callBack);
      return () => undefined;
    };
    for (const shown of ["6", "60", "60."]) draft(KEY).save({ shown });
    expect(due).toHaveLength(1);

    due[0]?.();

    const db = await deviceDb(DEVICE);
    await vi.waitFor(async () => expect(await draftOf(db, KEY)).toEqual({ shown: "60." }));
  });

  test("stays with whoever typed it when the person changes", async () => {
    await signIn("ben@hill", "a spoon of sage");
    await changePerson(DEVICE);
    draft(KEY).save({ shown: "60." });

    await changePerson(OTHER_DEVICE);

    expect(await draftOf(await deviceDb(DEVICE), KEY)).toEqual({ shown: "60." });
    expect(await draft(KEY).load()).toBeNull();
  });

  test("is what was typed last, written or not", async () => {
    draft(KEY).save({ shown: "6" });
    await writeDrafts();

    draft(KEY).save({ shown: "60.2" });

    expect(await draft(KEY).load()).toEqual({ shown: "60.2" });
  });

  test("holds an update of the app back until it is cleared", async () => {
    draft(KEY).save({ shown: "60.2" });
    expect(dirtyDrafts.value).toEqual([KEY]);

    await draft(KEY).clear();

    expect(dirtyDrafts.value).toEqual([]);
    expect(await draft(KEY).load()).toBeNull();
  });
});
