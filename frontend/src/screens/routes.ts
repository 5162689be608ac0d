/** Every screen with its path; each is a chunk of its own, loaded when it is first asked for. */
import type { ComponentType } from "preact";

/** A screen is given what its path says. */
export type ScreenOf = ComponentType<{ params: Record<string, string> }>;

/** A path such as `/weigh-in/:batch/:line` and its screen. */
export interface Route {
  pattern: string;
  load: () => Promise<{ Screen: ScreenOf }>;
}

export const ROUTES: Route[] = [
  { pattern: "/", load: () => import("./today/TodayScreen.tsx") },
  { pattern: "/start", load: () => import("./start/StartScreen.tsx") },
  { pattern: "/start/:recipe", load: () => import("./start/ScaleScreen.tsx") },
  { pattern: "/lay-out/:batch", load: () => import("./lay-out/LayOutScreen.tsx") },
  { pattern: "/weigh-in/:batch/:line", load: () => import("./weigh-in/WeighInScreen.tsx") },
  { pattern: "/step/:batch/:step", load: () => import("./step/StepScreen.tsx") },
  { pattern: "/finish/:batch", load: () => import("./finish/FinishScreen.tsx") },
  { pattern: "/label/:lot", load: () => import("./label/LabelScreen.tsx") },
  { pattern: "/batches", load: () => import("./batch/BatchesScreen.tsx") },
  { pattern: "/batch/:batch", load: () => import("./batch/BatchScreen.tsx") },
  { pattern: "/cost/:batch", load: () => import("./money/CostScreen.tsx") },
  { pattern: "/cost/:batch/work", load: () => import("./money/WorkScreen.tsx") },
  { pattern: "/cost/:batch/spent", load: () => import("./money/SpentScreen.tsx") },
  { pattern: "/cost/:batch/price", load: () => import("./money/PriceScreen.tsx") },
  { pattern: "/cost/:batch/products", load: () => import("./money/ProductsScreen.tsx") },
  { pattern: "/cost/:batch/row/:entry", load: () => import("./money/RowScreen.tsx") },
  { pattern: "/asked/:material", load: () => import("./money/AskedScreen.tsx") },
  { pattern: "/paid/:lot", load: () => import("./money/PaidScreen.tsx") },
  { pattern: "/heat/:batch", load: () => import("./heat/HeatScreen.tsx") },
  { pattern: "/heat/:batch/:step", load: () => import("./heat/HeatScreen.tsx") },
  { pattern: "/heat-log/:batch/:entry", load: () => import("./heat/HeatLogScreen.tsx") },
  { pattern: "/heat-log/:batch/:entry/correct", load: () => import("./heat/HeatScreen.tsx") },
  { pattern: "/batch/:batch/sums", load: () => import("./sums/SumsScreen.tsx") },
  { pattern: "/sums", load: () => import("./sums/SumsScreen.tsx") },
  { pattern: "/sums/:sum", load: () => import("./sums/SumScreen.tsx") },
  { pattern: "/sums/:sum/:batch", load: () => import("./sums/SumScreen.tsx") },
  { pattern: "/batch/:batch/hold", load: () => import("./hold/HoldScreen.tsx") },
  { pattern: "/yields/:recipe", load: () => import("./charts/YieldsScreen.tsx") },
  { pattern: "/correct/:batch/:entry", load: () => import("./batch/CorrectScreen.tsx") },
  { pattern: "/sign-in", load: () => import("./sign-in/SignInScreen.tsx") },
  { pattern: "/sign-in/:way", load: () => import("./sign-in/SignInScreen.tsx") },
  { pattern: "/sign-in/:way/:code", load: () => import("./sign-in/SignInScreen.tsx") },
  { pattern: "/people", load: () => import("./people/PeopleScreen.tsx") },
  { pattern: "/receive", load: () => import("./receive/ReceiveScreen.tsx") },
  { pattern: "/stock", load: () => import("./stock/StockScreen.tsx") },
  { pattern: "/stock/:place", load: () => import("./stock/StockScreen.tsx") },
  { pattern: "/lot/:lot", load: () => import("./lot/LotScreen.tsx") },
  { pattern: "/lot/:lot/chart", load: () => import("./charts/FillsScreen.tsx") },
  { pattern: "/lot/:lot/hold", load: () => import("./hold/HoldScreen.tsx") },
  { pattern: "/lot/:lot/fill", load: () => import("./lot/FillScreen.tsx") },
  { pattern: "/lot/:lot/:act", load: () => import("./lot/ActScreen.tsx") },
  { pattern: "/lot/:lot/correct/:entry", load: () => import("./lot/CorrectScreen.tsx") },
  { pattern: "/stall", load: () => import("./stall/StallScreen.tsx") },
  { pattern: "/bring/:place", load: () => import("./stall/BringScreen.tsx") },
  { pattern: "/dispatch", load: () => import("./dispatch/DispatchScreen.tsx") },
  { pattern: "/dispatch/:place", load: () => import("./dispatch/DispatchScreen.tsx") },
  { pattern: "/trace", load: () => import("./trace/FindLotScreen.tsx") },
  { pattern: "/trace/:lot", load: () => import("./trace/TraceScreen.tsx") },
  { pattern: "/trace/:lot/call", load: () => import("./trace/CallScreen.tsx") },
  { pattern: "/trace-end/:type/:id", load: () => import("./trace/EndScreen.tsx") },
  { pattern: "/skills", load: () => import("./training/SkillsScreen.tsx") },
  { pattern: "/skills/:member", load: () => import("./training/ReaderScreen.tsx") },
  {
    pattern: "/skills/:member/correct/:entry",
    load: () => import("./training/CorrectScreen.tsx"),
  },
  { pattern: "/drill", load: () => import("./training/DrillScreen.tsx") },
  { pattern: "/instruments", load: () => import("./instruments/InstrumentsScreen.tsx") },
  { pattern: "/instruments/:id", load: () => import("./instruments/SheetScreen.tsx") },
  { pattern: "/instruments/:id/chart", load: () => import("./instruments/ChartScreen.tsx") },
  { pattern: "/instruments/:id/check", load: () => import("./instruments/CheckScreen.tsx") },
  {
    pattern: "/instruments/:id/correct/:entry",
    load: () => import("./instruments/CorrectScreen.tsx"),
  },
  {
    pattern: "/instruments/:id/leaned/:check",
    load: () => import("./instruments/LeanedScreen.tsx"),
  },
  { pattern: "/outbox", load: () => import("./outbox/OutboxScreen.tsx") },
  { pattern: "/set-up", load: () => import("./set-up/SetUpScreen.tsx") },
  { pattern: "/set-up/cooperative", load: () => import("./set-up/CooperativeScreen.tsx") },
  { pattern: "/set-up/rates", load: () => import("./money/RatesScreen.tsx") },
  { pattern: "/set-up/people", load: () => import("./set-up/MembersScreen.tsx") },
  { pattern: "/set-up/people/:id", load: () => import("./set-up/JoinCodeScreen.tsx") },
  { pattern: "/set-up/recipes", load: () => import("./set-up/recipe/RecipesScreen.tsx") },
  { pattern: "/set-up/recipes/:recipe", load: () => import("./set-up/recipe/RecipeScreen.tsx") },
  {
    pattern: "/set-up/recipes/:recipe/line/:line",
    load: () => import("./set-up/recipe/LineScreen.tsx"),
  },
  {
    pattern: "/set-up/recipes/:recipe/step/:step",
    load: () => import("./set-up/recipe/StepScreen.tsx"),
  },
  { pattern: "/set-up/recipe-import", load: () => import("./set-up/recipe/ImportScreen.tsx") },
  {
    pattern: "/set-up/recipes/:recipe/export",
    load: () => import("./set-up/recipe/ExportScreen.tsx"),
  },
  {
    pattern: "/set-up/recipes/:recipe/compare",
    load: () => import("./set-up/recipe/CompareScreen.tsx"),
  },
  {
    pattern: "/set-up/recipes/:recipe/pack/:size",
    load: () => import("./set-up/recipe/PackScreen.tsx"),
  },
  { pattern: "/set-up/places/:id", load: () => import("./set-up/PlaceScreen.tsx") },
  { pattern: "/set-up/materials/:id", load: () => import("./set-up/MaterialScreen.tsx") },
  { pattern: "/set-up/instruments/:id", load: () => import("./set-up/InstrumentScreen.tsx") },
  { pattern: "/set-up/sources/:id", load: () => import("./set-up/SourceScreen.tsx") },
  { pattern: "/set-up/recipients/:id", load: () => import("./set-up/RecipientScreen.tsx") },
  { pattern: "/set-up/:area", load: () => import("./set-up/ListScreen.tsx") },
  // For those who build it: all parts in all states.
  ...(import.meta.env.DEV
    ? [{ pattern: "/parts", load: () => import("../parts/gallery.tsx") }]
    : []),
];
