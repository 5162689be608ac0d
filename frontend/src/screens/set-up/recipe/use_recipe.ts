/** The recipe being written, shared by its page, its lines and its steps; kept as a draft (R12). */
import { type Signal, signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { textIn } from "../../../calc/bodies.ts";
import { type Draft, draft, draftsBeginning } from "../../../state/drafts.ts";
import { current } from "../../../state/session.ts";
import { materials, type Recipe, recipes } from "../../../state/stock.ts";
import type { Typed } from "../../common/drafted.ts";
import { newId } from "../../common/edge.ts";
import type { Bound, NumberPlan } from "../form.ts";
import { mayWrite } from "../who.ts";
import type { LineMaterial } from "./amounts.ts";
import { blankRecipe, type RecipeTyped, recipeTyped, wholeDraft } from "./typed.ts";

/** A recipe at work. */
export interface RecipeAtWork {
  /** As in the address: an id, or `new`. */
  param: string;
  typed: RecipeTyped;
  type: (part: Partial<RecipeTyped>) => void;
  clear: () => Promise<void>;
  /** What was published so far; null for a new recipe. */
  published: Recipe | null;
  isTyped: boolean;
}

interface Opened {
  typed: Signal<RecipeTyped | null>;
  isTyped: Signal<boolean>;
  kept: Draft<RecipeTyped>;
}

// The page of a recipe and the pages of its lines write one form, so it outlives each of them.
const KEY = "set-up/recipe/";
const opened = new Map<string, Opened>();

function openedOf(param: string): Opened {
  const key = `${KEY}${param}`;
  const own = `${current.value?.device ?? ""} ${key}`;
  const known = opened.get(own);
  if (known !== undefined) return known;
  const fresh: Opened = { typed: signal(null), isTyped: signal(false), kept: draft(key) };
  opened.set(own, fresh);
  return fresh;
}

/** Null while the draft is read. */
export function useRecipe(param: string): RecipeAtWork | null {
  const { typed, isTyped, kept } = openedOf(param);
  const published = recipes.value.find((each) => each.id === param) ?? null;
  useEffect(() => {
    if (typed.value !== null) return;
    void kept.load().then((before) => {
      const begin = beginning(param, published);
      isTyped.value = before !== null;
      typed.value ??= wholeDraft({ ...begin, ...before });
    });
    // What was published is only looked at when the form is opened.
  }, [kept]);
  if (typed.value === null) return null;
  const isBehind = published !== null && typed.value.based_on !== published.latest.entry;
  // What nobody has typed into begins from the latest version, also after another one came.
  const now = isBehind && !isTyped.value ? beginning(param, published) : typed.value;
  return {
    param,
    typed: now,
    type(part) {
      const next: RecipeTyped = Object.assign({}, now, part);
      typed.value = next;
      isTyped.value = true;
      kept.save(next);
    },
    clear() {
      typed.value = beginning(param, published);
      isTyped.value = false;
      return kept.clear();
    },
    published,
    isTyped: isTyped.value,
  };
}

/** Puts a whole recipe into the form as a draft; false where a draft stands there already. */
export async function openDraft(param: string, recipe: RecipeTyped): Promise<boolean> {
  const { typed, isTyped, kept } = openedOf(param);
  if (isTyped.value || (await kept.load()) !== null) return false;
  typed.value = recipe;
  isTyped.value = true;
  kept.save(recipe);
  return true;
}

/** A recipe that is being written on this phone; `param` is as in its address. */
export interface RecipeDraft {
  param: string;
  name: string;
  /** Where it becomes the next version of a recipe, not the first one of a new. */
  is_next: boolean;
}

/** Every recipe half written on this phone, by name. */
export async function recipeDrafts(): Promise<RecipeDraft[]> {
  const kept = await draftsBeginning(KEY);
  return [...kept]
    .map(([key, typed]) => {
      const form = { ...(typed as object) }; // as this form kept it
      return {
        param: key.slice(KEY.length),
        name: textIn(form, "name") ?? "",
        is_next: (textIn(form, "based_on") ?? "") !== "",
      };
    })
    .sort((a, b) => a.name.localeCompare(b.name));
}

/** Forgets the form of a recipe that was published: the next one begins from the new version. */
export async function closeRecipe(recipe: RecipeAtWork): Promise<void> {
  await recipe.clear();
  opened.delete(`${current.value?.device ?? ""} set-up/recipe/${recipe.param}`);
}

function beginning(param: string, published: Recipe | null): RecipeTyped {
  if (published !== null) return recipeTyped(published.id, published.latest);
  return blankRecipe(param === "new" ? newId() : param);
}

/** Fields bound to a part of a recipe: itself, one line or one step. */
export function useBound(
  typed: Typed,
  type: (part: Typed) => void,
  numbers: Readonly<Record<string, NumberPlan>>,
): Bound {
  const open = useSignal<string | null>(null);
  return { typed, type, open, numbers, found: null, canWrite: mayWrite("recipe_published") };
}

/** The recipes whose latest version makes this material. */
export function recipesOf(material: string): Recipe[] {
  if (material === "") return [];
  return recipes.value.filter(({ latest }) => textIn(latest.body, "product") === material);
}

/** What a line needs to know of a material; null for one this phone does not know. */
export function lineMaterial(id: string): LineMaterial | null {
  const defined = materials.value.find((each) => each.id === id);
  if (defined === undefined) return null;
  return {
    measured_by: textIn(defined.fields, "measured_by") ?? "mass",
    density_of: textIn(defined.fields, "density_of") ?? "",
  };
}
