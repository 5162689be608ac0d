/** Every screen that shows a number on which health may hang shows the caution about it. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { CAUTIONS_ABOUT } from "../text/cautions.ts";

const SCREENS = new URL("./", import.meta.url);

/** What in a source makes a number that touches health, and what its caution is about. */
const TOUCHES: readonly { source: RegExp; about: string }[] = [
  { source: /calc\/(acidified|acidity)\.ts"/, about: "acidified" },
  { source: /calc\/altitude\.ts"/, about: "altitude" },
  { source: /calc\/(curing|cure_limits)\.ts"/, about: "curing" },
  { source: /calc\/(heat_logs|lethality)\.ts"/, about: "lethality" },
  { source: /calc\/cooling\.ts"/, about: "cooling" },
  { source: /calc\/holding\.ts"/, about: "holding" },
  { source: /calc\/drying\.ts"/, about: "water_activity" },
  { source: /calc\/brine\.ts"/, about: "brine" },
  { source: /calc\/(kettle|brix)\.ts"/, about: "sugar" },
  { source: /calc\/mixing\.ts"/, about: "acidified" },
  { source: /calc\/(fills|net_content|net_packs)\.ts"/, about: "net_content" },
  // A date that is worked out, or the rule it is worked out by.
  { source: /\b(lastDay|earliest)\b[^;]*calc\/shelf_life\.ts"/, about: "shelf_life" },
  { source: /<LifeOf\b|\blife\.on, true\)/, about: "shelf_life" },
  // A date in a list, or that it is over.
  { source: /(?<!function )\b(lifeShown|lotSays)\(/, about: "shelf_life" },
  // What stands on a pack, and what is promised there.
  { source: /\bLABEL\.net\b/, about: "net_content" },
  { source: /\bclass="label"/, about: "label" },
  // A recipe made larger or smaller, a limit out of print, what lets a batch go.
  { source: /\bscaledVersion\b|\bunscaledOf\(batch\)/, about: "scaling" },
  { source: /calc\/process_limits\.ts"/, about: "process_limit" },
  { source: /"hold_decided"/, about: "hold" },
  { source: /<DespiteField\b|\bDESPITE\.label\b/, about: "despite" },
  { source: /\bFILLS\.where\(|=\{fillNumbers\}/, about: "net_content" },
  { source: /difference_words\.ts"|import \{ doneWords \}/, about: "cautionsOfStep" },
  { source: /\bheatVerdictWord\(/, about: "cautionOf" },
  // A limit of a step, and what a reading is beside it, where it is drawn.
  {
    source: /import (type )?\{[^}]*\b(BatchStep|StepTyped)\b[^}]*\}[\s\S]*\n {2,}<\w/,
    about: "cautionsOfStep",
  },
];

/** Functions that choose a caution for what is on the screen, and what they choose among. */
const CHOOSE: Readonly<Record<string, readonly string[]>> = {
  cautionsOfStep: ["ph", "heat", "sugar", "water_activity", "brine", "acidified"],
  cautionOf: ["lethality", "cooling", "holding"],
};

function sourceOf(file: URL): string {
  return readFileSync(file, "utf8");
}

/** The source without what is there for its types alone. */
function running(source: string): string {
  return source
    .replace(/import type [^;]+;/g, "")
    .replace(/import \{([^}]*)\}( from "[^"]*calc[^"]*";)/g, (whole, names: string) =>
      names.split(",").every((name) => /^\s*(type\s|$)/.test(name)) ? "" : whole,
    );
}

/** A module of the screens and all it draws with, without the rest of the app. */
function drawnBy(file: URL, seen = new Map<string, string>()): Map<string, string> {
  if (seen.has(file.href)) return seen;
  const source = sourceOf(file);
  seen.set(file.href, source);
  for (const [, path] of source.matchAll(/(?:from|import\()\s*"(\.[^"]+\.tsx?)"/g)) {
    const next = new URL(path ?? "", file);
    if (next.href.startsWith(SCREENS.href)) drawnBy(next, seen);
  }
  return seen;
}

function cautionsIn(source: string): string[] {
  return source.match(/<Caution\b[\s\S]*?\/>/g) ?? [];
}

/** What the sums at the bench name as theirs; the screen that works one out draws it. */
function cautionsOfSums(sources: readonly string[], drawn: string): string[] {
  const isWorkedOut = sources.some((each) => each.includes("= useSum("));
  if (isWorkedOut && !drawn.includes("plan.about")) return [];
  return sources
    .filter((each) => each.includes(": SumPlan = {"))
    .flatMap((each) => each.match(/\babout: \[[^\]]*\]/g) ?? []);
}

function missingIn(sources: readonly string[]): string[] {
  const drawn = sources.flatMap(cautionsIn).join();
  const chosen = Object.keys(CHOOSE).filter((each) => drawn.includes(each));
  const cautions = [
    drawn,
    ...cautionsOfSums(sources, drawn),
    ...chosen.flatMap((each) => CHOOSE[each] ?? []),
  ].join();
  return TOUCHES.filter(
    ({ source, about }) =>
      sources.some((each) => source.test(running(each))) && !cautions.includes(about),
  ).map(({ about }) => about);
}

const ROUTES = [
  ...sourceOf(new URL("routes.ts", SCREENS)).matchAll(
    /pattern: "([^"]+)",\s*load: \(\) => import\("(\.\/[^"]+)"\)/g,
  ),
].map(([, pattern = "", path = ""]) => ({ pattern, file: new URL(path, SCREENS) }));

test("the list of screens is read whole", () => {
  expect(ROUTES.length).toBeGreaterThan(50);
});

test("what a number touches is something there is a caution about", () => {
  const known: readonly string[] = [...CAUTIONS_ABOUT, ...Object.keys(CHOOSE)];

  expect(TOUCHES.filter(({ about }) => !known.includes(about))).toEqual([]);
});

test("a number without its caution is found, a type alone is not", () => {
  const call = 'import { ingoing } from "../../calc/curing.ts";\n';

  expect(missingIn([call])).toEqual(["curing"]);
  expect(missingIn([call, '<Caution about="curing" />'])).toEqual([]);
  expect(missingIn(['import type { Ingoing } from "../../calc/curing.ts";'])).toEqual([]);
  expect(missingIn(['import { type Ingoing } from "../../calc/curing.ts";'])).toEqual([]);
});

describe("a screen shows the caution about every such number", () => {
  test.each(ROUTES)("$pattern", ({ file }) => {
    const sources = [...drawnBy(file).values()];

    expect(missingIn(sources)).toEqual([]);
  });
});

/** Every file of the screens that draws a caution, with the routes it is reached by. */
function drawers(): Map<string, (typeof ROUTES)[number][]> {
  const found = new Map<string, (typeof ROUTES)[number][]>();
  for (const route of ROUTES) {
    for (const [file, source] of drawnBy(route.file)) {
      if (source.includes("<Caution")) found.set(file, [...(found.get(file) ?? []), route]);
    }
  }
  return found;
}

/** Whether the other files of a screen draw the same caution in the same words. */
function isSaidBy(others: ReadonlyMap<string, string>, file: string, taken: string): boolean {
  return [...others].some(([each, source]) => each !== file && cautionsIn(source).join() === taken);
}

describe("a caution that is taken away is missed, unless the screen says the same elsewhere", () => {
  test.each([...drawers()])("%s", (file, routes) => {
    const taken = cautionsIn(sourceOf(new URL(file))).join();

    const isMissed = routes.some((route) => {
      const sources = drawnBy(route.file);
      if (isSaidBy(sources, file, taken)) return true;
      sources.set(file, sourceOf(new URL(file)).replaceAll(/<Caution\b/g, "<Nothing"));
      return missingIn([...sources.values()]).length > 0;
    });

    expect(isMissed).toBe(true);
  });
});
