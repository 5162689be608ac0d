/** The steps of a check: what is put on or in, how often it is read, what the drawing shows. */
import type { DrawingName } from "../../parts/CheckDrawing.tsx";

/** A known mass, buffer or value: in the unit of the instrument, true to plus or minus. */
export type Reference = {
  value: string;
  /** Of a mass; "" where none is marked on it. */
  accuracy_class: string;
  tolerance: string;
};

/** 7 and 7.00 are one buffer. */
export function isSame(one: Reference, other: Reference): boolean {
  return Number(one.value) === Number(other.value);
}

export type Depth = "quick" | "full";

/** A step of an entry that is read; `where` one reading each, else `reads` readings of one step. */
export interface Stage {
  key: string;
  is: "look" | "read";
  sort: string;
  drawing: DrawingName;
  reference: Reference | null;
  reads: number;
  where: readonly string[];
}

export const CORNERS: readonly string[] = ["front", "right", "back", "left"];
const REPEATS = 5; // fewer say too little about the spread: scale_checks REPEATS_LEAST
const FILLINGS = 3;

const COMPARED_BY: Record<string, DrawingName> = {
  ph_meter: "buffer",
  refractometer: "prism",
  salometer: "float",
  timer: "clocks",
};
const VESSELS: readonly string[] = ["spoon", "cup", "cylinder"];

/** A vessel is filled with water that another instrument weighs. */
export function isVessel(sort: string): boolean {
  return VESSELS.includes(sort);
}

/** Sorts that are compared with something known. */
export function hasReferences(sort: string): boolean {
  return !isVessel(sort) && sort !== "thermometer";
}

/** How thorough a check of this sort can be. */
export function depthsOf(sort: string): readonly Depth[] {
  return sort === "scale" || sort === "thermometer" ? ["quick", "full"] : ["full"];
}

/** The stages of a check, in the order in which hands do them. */
export function stagesOf(sort: string, depth: Depth, references: readonly Reference[]): Stage[] {
  if (sort === "scale") return scaleStages(depth, references);
  if (isVessel(sort)) return vesselStages(sort);
  if (sort === "thermometer") {
    const ice = read("ice", "ice");
    return depth === "quick" ? [ice] : [ice, read("boiling", "boiling")];
  }
  const of = sort === "ph_meter" ? "buffer" : "comparison";
  const drawing = COMPARED_BY[sort] ?? "compare";
  return rising(references).map((each) => ({
    ...read(`${of}:${each.value}`, drawing),
    sort: of,
    reference: each,
  }));
}

function scaleStages(depth: Depth, references: readonly Reference[]): Stage[] {
  const up = rising(references);
  const middle = up[Math.floor(up.length / 2)];
  const level: Stage = { ...read("level", "level"), is: "look" };
  if (middle === undefined) return [level, read("zero", "empty")];
  const put = (sort: string, reference: Reference) => ({
    ...read(`${sort}:${reference.value}`, sort === "falling" ? "lighter" : "middle"),
    sort,
    reference,
  });
  if (depth === "quick") return [level, read("zero", "empty"), put("rising", middle)];
  return [
    level,
    read("zero", "empty"),
    ...up.map((each) => put("rising", each)),
    // The heaviest has just been read.
    ...up
      .slice(0, -1)
      .reverse()
      .map((each) => put("falling", each)),
    read("return_to_zero", "taken_off"),
    {
      ...read("off_centre", "off_centre"),
      reference: middle,
      where: CORNERS,
      reads: CORNERS.length,
    },
    { ...read("repeats", "repeat"), reference: middle, reads: REPEATS },
  ];
}

function vesselStages(sort: string): Stage[] {
  const drawing = sort === "spoon" ? "spoon" : sort === "cup" ? "cup" : "fill";
  return [
    { ...read("tare", "empty_vessel"), sort: "tare" },
    { ...read("water", drawing), reads: sort === "spoon" ? REPEATS : FILLINGS },
  ];
}

function read(sort: string, drawing: DrawingName): Stage {
  return { key: sort, is: "read", sort, drawing, reference: null, reads: 1, where: [] };
}

function rising(references: readonly Reference[]): Reference[] {
  return [...references].sort((a, b) => Number(a.value) - Number(b.value));
}
