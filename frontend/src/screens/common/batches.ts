/** What the screens of a batch share: its sheet, the names on it, the way to its next act. */
import type { BatchState } from "../../calc/batches.ts";
import type { InstrumentState } from "../../calc/instruments.ts";
import { sheet, sheetsOf } from "../../state/sheets.ts";
import { type Defined, instruments, nameOf, recipes } from "../../state/stock.ts";
import { type NextAct, underWay } from "../../state/today.ts";
import type { Shown } from "../../state/types.ts";

export type BatchLine = BatchState["lines"][number];
export type BatchStep = BatchState["steps"][number];

/** The sheet of a batch, or null while this phone knows nothing about it. */
export function batchOf(id: string): Shown<BatchState> | null {
  return sheet<BatchState>(`batch:${id}`).value;
}

/** The name of the recipe a batch follows; its code when the recipe is not known here. */
export function recipeNameOf(batch: BatchState): string {
  const recipe = recipes.value.find((each) => each.id === batch.recipe);
  return recipe?.name ?? batch.code ?? "";
}

/** The soluble solids a batch is cooked to, as its recipe version says; null for other recipes. */
export function targetOf(batch: BatchState): string | null {
  return said(batch, "target_solids_percent");
}

/** What its recipe version says does not scale; null where it says nothing or is not known here. */
export function unscaledOf(batch: BatchState): string | null {
  return said(batch, "does_not_scale");
}

function said(batch: BatchState, field: string): string | null {
  const recipe = recipes.value.find((each) => each.id === batch.recipe);
  const version = recipe?.versions.find((each) => each.entry === batch.recipe_version);
  const words = version?.body[field];
  return typeof words === "string" ? words : null;
}

/** The name of a line's material. */
export function lineName(line: BatchLine): string {
  return nameOf("material", line.material);
}

/** Where the next act of a batch is done. */
export function pathOfAct(next: NextAct): string {
  if (next.act === "weigh_in" && next.line !== undefined) {
    return `/weigh-in/${next.batch}/${next.line}`;
  }
  if (next.act === "step" && next.step !== undefined) return `/step/${next.batch}/${next.step}`;
  return next.act === "finish" ? `/finish/${next.batch}` : `/lay-out/${next.batch}`;
}

/** What comes next for this batch; its own page when nothing does. */
export function pathAfter(batch: string): string {
  const next = underWay.value.find((each) => each.batch === batch)?.next;
  return next === undefined ? `/batch/${batch}` : pathOfAct(next);
}

/** Where everything stands that leaned on the instrument of a failed check; all instruments where
 * this phone does not know whose check it is. */
export function pathOfLeaned(check: string | undefined): string {
  const failed = sheetsOf<InstrumentState>("instrument").value.find(({ state }) =>
    state.doubts?.some((each) => each.check === check),
  );
  return failed === undefined ? "/instruments" : `/instruments/${failed.state.id}/leaned/${check}`;
}

/** An instrument as the screens need it; decimals as they were set up. */
export interface InstrumentShown {
  id: string;
  name: string;
  sort: string;
  unit: string;
  division: string | null;
  capacity: string | null;
  repeatability: string | null;
  bowl_tare: string | null;
  /** Where it stands; null for one that goes from kitchen to kitchen. */
  place: string | null;
  /** It is at hand where the batch is made. */
  is_here: boolean;
}

function textOf(value: unknown): string | null {
  return typeof value === "string" && value !== "" ? value : null;
}

function instrumentShown(defined: Defined, kitchen: string | null): InstrumentShown {
  const { fields } = defined;
  const place = textOf(fields.place);
  return {
    id: defined.id,
    name: defined.name,
    sort: textOf(fields.sort) ?? "scale",
    unit: textOf(fields.unit) ?? "g",
    division: textOf(fields.division),
    capacity: textOf(fields.capacity),
    repeatability: textOf(fields.repeatability),
    bowl_tare: textOf(fields.bowl_tare),
    place,
    is_here: place === null || kitchen === null || place === kitchen,
  };
}

/** Instruments in use, as set up; `kitchen` is where one stands, null where that matters not. */
export function instrumentsInUse(kitchen: string | null): InstrumentShown[] {
  return instruments.value
    .filter((each) => !each.is_retired)
    .map((each) => instrumentShown(each, kitchen));
}
