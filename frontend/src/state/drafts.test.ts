import { beforeEach, describe, expect, test } from "vitest";
import { DEVICE } from "../../simulation/bench.ts";
import { testHouse, welcome } from "../../simulation/house.ts";
import { draftOf } from "../store/drafts.ts";
import { dirtyDrafts, draft, writeDrafts } from "./drafts.ts";
import { deviceDb } from "./house.ts";
import { signIn } from "./session.ts";

const KEY = "weigh-in/b1/2";

beforeEach(async () => {
  await testHouse(() => welcome(DEVICE));
  await signIn("ama@hill", "a spoon of thyme");
});

describe("a draft", () => {
  test("is written when the page goes, and offered to the next one", async () => {
    draft(KEY).save({ shown: "60." });

    await writeDrafts();

    expect(await draftOf(await deviceDb(DEVICE), KEY)).toEqual({ shown: "60." });
    expect(await draft(KEY).load()).toEqual({ shown: "60." });
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
