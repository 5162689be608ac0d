/** Which modules travel together. Fewer, larger files: every small one costs half a kilobyte again. */

/** The first rule that fits names the file; what fits none is placed by the bundler. */
const RULES: readonly (readonly [RegExp, string])[] = [
  [/\/node_modules\/(preact|@preact|idb)\//, "base"],
  [/\/calc\/tables\/density\.ts$/, "tables"],
  // What the first screen needs, and nothing else: it must come up fast on an old phone.
  [/\/calc\/(numbers|record|bodies|subjects|units|shelf_life|tables\/units)\.ts$/, "base"],
  [/\/parts\/(Cup|DayGlass|Frame|Icon|Plain|Tube|WaitingGauge|drawing|signs)\.tsx?$/, "base"],
  [/\/screens\/shared\/(HeadGauge|batches|edge|lots|use_now)\.tsx?$/, "base"],
  [/\/text\/(app|lots|numbers|parts|today)\.ts$/, "base"],
  [/\/(state|store|sync)\/(?!adding|on_top|shown|held|folding|making|trace)[\w.]+\.ts$/, "base"],
  // Fetched right after it.
  [/\/state\/(adding|on_top\w*|shown|held|folding)\.ts$/, "adding"],
  [/\/calc\/(?!density|spread|codes|trace|recipes)\w+\.ts$/, "adding"],
  [/\/(entries\/\w+|state\/making)\.ts$/, "adding"],
  // What several tasks share, then one file a task.
  [/\/(parts|screens\/shared)\/|\/state\/trace\.ts$|\/calc\/(codes|trace|recipes)\.ts$/, "shared"],
  [/\/text\/set_up_recipe\.ts$|\/screens\/set-up\/recipe\/\w*(?<!Screen)\.tsx?$/, "set_up_recipe"],
  [/\/text\/set_up\.ts$|\/screens\/set-up\/\w*(?<!Screen)\.tsx?$/, "set_up"],
  [/\/screens\/(sign-in|people)\//, "sign_in"],
  [/\/screens\/trace\//, "trace"],
  [/\/text\//, "words"],
];

/** The name of the file a module goes into, or null. */
export function chunkOf(id: string): string | null {
  // A style sheet goes with what imports it: named, it would draw the scripts of its file along.
  if (id.endsWith(".css")) return null;
  const rule = RULES.find(([fits]) => fits.test(id));
  return rule?.[1] ?? null;
}
