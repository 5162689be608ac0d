/** Which modules travel together. Fewer, larger files: every small one costs half a kilobyte again. */

/** The first rule that fits names the file; what fits none is placed by the bundler. */
const RULES: readonly (readonly [RegExp, string])[] = [
  [/\/node_modules\/(preact|@preact|idb)\//, "base"],
  [/\/entries\/kinds\.ts$/, "tables_of_kinds"],
  [/\/calc\/tables\/density\.ts$/, "tables"],
  [/\/calc\/tables\/(checks|net_content|charts|gauge|heat)\.ts$/, "tables_of_limits"],
  [/\/calc\/tables\/yields\.ts$/, "tables_of_yields"],
  [/\/calc\/tables\/bench\.ts$/, "tables_of_the_bench"],
  // What the first screen needs, and nothing else: it must come up fast on an old phone.
  [/\/calc\/(numbers|record|bodies|against|subjects|units|shelf_life|tables\/units)\.ts$/, "base"],
  [
    /\/parts\/(Cup|DayGlass|Frame|Icon|Plain|Tube|WaitingGauge|WithCodes|drawing|signs)\.tsx?$/,
    "base",
  ],
  [/\/screens\/common\/(HeadGauge|batches|edge|later|lots|use_now)\.tsx?$/, "base"],
  [/\/entries\/moments\.ts$/, "base"],
  [/\/text\/(app|lots|numbers|parts|today)\.ts$/, "base"],
  [
    /\/(state|store|sync)\/(?!adding|on_top|shown|held|folding|road_folds|judging|making|trace|impact)[\w.]+\.ts$/,
    "base",
  ],
  [/\/calc\/(acidified|altitude|cure_limits|curing|drying|kettle|mixing|yields)\.ts$/, "bench"],
  [
    /\/screens\/money\/|\/text\/money\.ts$|\/calc\/(batch_costs|coins|cost_views|cost_walk|costs|lot_worth|prices|product_shares|stock_costs|share_outs)\.ts$/,
    "money",
  ],
  [/\/calc\/(process_limits|logger_\w+)\.ts$/, "loggers"],
  [
    /\/(screens\/(heat\/|batch\/HeatLogs|hold\/HeldLogs)|text\/heat(_results)?\.ts$)|\/(parts\/HeatChart|common\/TimerLines)\.tsx$/,
    "heat",
  ],
  [/\/screens\/lot\/(CorrectFill|[Ff]ill\w*|use_fill)\.tsx?$|\/text\/fill\.ts$/, "fills"],
  [/\/screens\/hold\//, "holds"],
  [
    /\/screens\/common\/(running_timers|sound)\.ts$|\/today\/(TimersAndChecks|ToCheck)\.tsx$/,
    "reminders",
  ],
  [/\/screens\/common\/(CorrectNumbers|numbers_in|moments)\.tsx?$/, "correcting"],
  // What the road adds up its sheets without: fetched with the first sheet that needs it.
  [
    /\/state\/(judging|on_top_(instrument|money|skill))\.ts$|\/calc\/(folds|instruments|\w+_checks|checks|limits|water|calibration|lines|fills|fill_trust|net_\w+|heat_\w+|cooling|crossings|reheating|holding|lethality|skills|skill_steps|money)\.ts$/,
    "judging",
  ],
  // Fetched right after it.
  [/\/state\/(adding|on_top\w*|shown|held|folding|road_folds)\.ts$/, "adding"],
  [
    /\/calc\/(?!density|spread|codes|trace|preparations|recipes|formulas|ratios|drills|charts|skill_class|groups|repeats)\w+\.ts$/,
    "adding",
  ],
  [/\/(entries\/\w+|state\/making)\.ts$/, "adding"],
  // Sums at the bench; what they are worked out by is a file of its own.
  [/\/screens\/sums\/|\/text\/sums\w*\.ts$/, "sums"],
  // Control charts, wherever they are reached from.
  [/\/(screens\/charts\/|text\/charts\.ts$|calc\/charts\w*\.ts$)|\/parts\/Chart\.tsx$/, "charts"],
  // Practice has drawings of its own.
  [
    /\/(screens\/training\/|text\/skills\.ts$|calc\/(drills|skill_class|groups|repeats)\.ts$)|\/parts\/(Dial|LiquidSurface|Spoon|Rings|scale_drawing)\.tsx?$/,
    "training",
  ],
  [
    /\/screens\/instruments\/|\/state\/impact\.ts$|\/text\/(instruments|checks)\.ts$|\/parts\/(CheckDrawing|BenchThings|ErrorChart)\.tsx$/,
    "instruments",
  ],
  // What several tasks share, then one file a task.
  [
    /\/(parts|screens\/common)\/|\/state\/trace\.ts$|\/calc\/(codes|trace|recipes|formulas|ratios)\.ts$/,
    "common",
  ],
  [
    /\/text\/(set_up_recipe|recipe_files)\.ts$|\/screens\/set-up\/recipe\/|\/calc\/preparations\.ts$/,
    "recipe",
  ],
  [/\/text\/set_up\.ts$|\/screens\/set-up\//, "set_up"],
  [/\/screens\/(sign-in|people|outbox)\//, "people"],
  [/\/screens\/(start|lay-out|weigh-in|step|finish|batch|label)\//, "make"],
  [/\/screens\/(receive|stock|lot|stall|dispatch|trace)\//, "goods"],
  [/\/text\//, "words"],
];

/** Files of a task hold several screens: one is seldom opened without the others. */
export const TASKS: readonly string[] = [
  "set_up",
  "recipe",
  "people",
  "make",
  "goods",
  "fills",
  "holds",
  "instruments",
  "training",
  "charts",
  "money",
  "heat",
  "sums",
];

/** The name of the file a module goes into, or null. */
export function chunkOf(id: string): string | null {
  // All styles are one sheet: named after its folder, one would draw the scripts of its file along.
  if (id.endsWith(".css")) return "base";
  const rule = RULES.find(([fits]) => fits.test(id));
  return rule?.[1] ?? null;
}
