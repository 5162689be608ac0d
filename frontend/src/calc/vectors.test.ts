/** Every public function of calc says what its vectors say, and none is without vectors. */

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ADAPTERS, answerTo, snakeCase } from "./vectors_registry.ts";

interface VectorFile {
  readonly function: string;
  readonly source: string;
  readonly vectors: readonly {
    readonly why: string;
    readonly given: unknown;
    readonly then: unknown;
  }[];
}

const CALC = new URL("./", import.meta.url);
const VECTORS = new URL("../../../tests/vectors/", import.meta.url);
/** Folders that other tests read. */
const OTHER_FOLDERS = new Set(["entries"]);

function vectorFiles(): { file: string; vectors: VectorFile }[] {
  const folders = readdirSync(VECTORS, { withFileTypes: true })
    .filter((each) => each.isDirectory() && !OTHER_FOLDERS.has(each.name))
    .map((each) => each.name);
  return folders.flatMap((file) =>
    readdirSync(new URL(`${file}/`, VECTORS)).map((name) => {
      const text = readFileSync(new URL(`${file}/${name}`, VECTORS), "utf8");
      return { file, vectors: JSON.parse(text) };
    }),
  );
}

/** file.function of every exported function; classes begin with a capital letter. */
async function calculations(): Promise<string[]> {
  const files = readdirSync(CALC)
    .filter((name) => name.endsWith(".ts") && !/\.test\.ts$|^vectors_/.test(name))
    .map((name) => name.slice(0, -3));
  const lists = files.map(async (file) => {
    const exported: Record<string, unknown> = await import(`./${file}.ts`);
    return Object.entries(exported)
      .filter(([key, value]) => typeof value === "function" && !/^[A-Z]/.test(key))
      .map(([key]) => `${file}.${snakeCase(key)}`);
  });
  return (await Promise.all(lists)).flat();
}

const FILES = vectorFiles();

describe.each(FILES)("$file.$vectors.function", ({ file, vectors }) => {
  test.each(vectors.vectors)("$why", ({ given, then }) => {
    expect(answerTo(file, vectors.function, given)).toEqual(then);
  });
});

test("no public function is without vectors", async () => {
  const withVectors = new Set(FILES.map(({ file, vectors }) => `${file}.${vectors.function}`));

  expect((await calculations()).filter((name) => !withVectors.has(name))).toEqual([]);
});

test("no vector file stands for a function that is not there", async () => {
  const known = new Set(await calculations());
  const unread = FILES.filter(({ file, vectors }) => {
    const isRead = ADAPTERS[file]?.[vectors.function] !== undefined;
    return !isRead || !known.has(`${file}.${vectors.function}`);
  });

  expect(unread.map(({ file, vectors }) => `${file}.${vectors.function}`)).toEqual([]);
});
