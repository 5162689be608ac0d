/** All styles end in one sheet, so one word must not mean two things in it. */
import { globSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const STATE = /\.[a-z-]+\.([a-z-]+)/g; // the second word of `.lot-tag.past`
const ALONE = /^\.([a-z-]+)$/gm; // `.day-past` without anything around it

test("a screen names nothing by a word that is a state of a part", () => {
  const states = new Set(words("parts", STATE));

  const names = words("screens", ALONE);

  expect(names.length).toBeGreaterThan(0);
  expect(names.filter((name) => states.has(name))).toEqual([]);
});

function words(folder: string, form: RegExp): string[] {
  const root = fileURLToPath(new URL(`../${folder}/`, import.meta.url));
  return globSync("**/*.css", { cwd: root })
    .flatMap((path) => selectors(readFileSync(root + path, "utf8")))
    .flatMap((selector) => [...selector.matchAll(form)].map((found) => found[1] ?? ""));
}

/** Each selector of a sheet, one by one, without its comments. */
function selectors(sheet: string): string[] {
  const plain = sheet.replace(/\/\*[\s\S]*?\*\//g, "");
  return [...plain.matchAll(/([^{}]+)\{/g)].flatMap((found) =>
    (found[1] ?? "").split(",").map((selector) => selector.trim()),
  );
}
