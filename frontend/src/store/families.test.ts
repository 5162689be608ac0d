import { beforeEach, expect, test } from "vitest";
import { emptyProfile, openedDevice, othersEntry, START_MS } from "../../simulation/bench.ts";
import { heldAbout } from "./reads.ts";
import type { Entry } from "./rows.ts";
import { type Pulled, takeIn } from "./take_in.ts";

beforeEach(emptyProfile);

type Named = Readonly<Record<string, string>>;

function made(id: string, subject: string, corrects: string | undefined): Entry {
  const subjects = [subject];
  if (corrects === undefined) return othersEntry(1, { id, subjects });
  return othersEntry(1, { id, subjects, kind: "correction", body: { corrects } });
}

/** Which entries are linked to each of the subjects, each entry arriving by itself. */
async function linked(arriving: readonly string[], named: Named): Promise<string[][]> {
  const db = await openedDevice();
  for (const [index, id] of arriving.entries()) {
    const entry = made(id, `lot:${id}`, named[id]);
    const data = { entry, received_at: entry.recorded_at };
    const pulled: Pulled = { type: "entry", id, seq: index + 1, data };
    await takeIn(db, [pulled], {}, START_MS);
  }
  const held = [...arriving].sort().map((id) => heldAbout(db, `lot:${id}`));
  const ids = (await Promise.all(held)).map(({ rows }) => rows.map((row) => row.id).sort());
  db.close();
  return ids;
}

/** All in both orders of arrival: the named one first, the naming one first. */
async function linkedEitherWay(ids: readonly string[], named: Named): Promise<string[][]> {
  const forwards = await linked(ids, named);
  emptyProfile();
  expect(await linked([...ids].reverse(), named)).toEqual(forwards);
  return forwards;
}

test("an entry that nobody corrects keeps its own subjects", async () => {
  expect(await linkedEitherWay(["a"], {})).toEqual([["a"]]);
});

test("a correction to another lot and what it corrects are both about both", async () => {
  expect(await linkedEitherWay(["a", "b"], { b: "a" })).toEqual([
    ["a", "b"],
    ["a", "b"],
  ]);
});

test("a correction of the correction joins its family", async () => {
  const family = ["a", "b", "c"];

  expect(await linkedEitherWay(family, { b: "a", c: "b" })).toEqual([family, family, family]);
});

test("corrections hold together though what they name has not come", async () => {
  expect(await linkedEitherWay(["b", "c", "d"], { b: "a", c: "a" })).toEqual([
    ["b", "c"],
    ["b", "c"],
    ["d"],
  ]);
});

test("a circle is one family, with what hangs on it", async () => {
  const family = ["b", "c", "d"];

  expect(await linkedEitherWay(family, { b: "c", c: "b", d: "b" })).toEqual([
    family,
    family,
    family,
  ]);
});
