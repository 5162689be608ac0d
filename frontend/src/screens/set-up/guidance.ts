/** What a fresh cooperative sets up next. */

/** The areas of setting up. */
export type AreaName =
  | "cooperative"
  | "places"
  | "instruments"
  | "materials"
  | "sources"
  | "recipients"
  | "recipes"
  | "people";

/** How many of each there are. */
export type SetUpSoFar = Readonly<Partial<Record<AreaName, number>>>;

/**
 * In the order in which one needs the other: units before amounts, a place before goods, a scale
 * and materials before a recipe. Sources and recipients come up by themselves at the door.
 */
const NEEDED: readonly AreaName[] = [
  "cooperative",
  "places",
  "instruments",
  "materials",
  "recipes",
];

/** The first area without which no batch can be made, or null when all are there. */
export function nextArea(soFar: SetUpSoFar): AreaName | null {
  return NEEDED.find((area) => isOpen(soFar, area)) ?? null;
}

/** How many of the areas a batch needs are set up, of how many. */
export function neededDone(soFar: SetUpSoFar): { done: number; all: number } {
  return {
    done: NEEDED.filter((area) => !isOpen(soFar, area)).length,
    all: NEEDED.length,
  };
}

/** Whether something is set up in an area; of people there is always one more to come. */
export function isOpen(soFar: SetUpSoFar, area: AreaName): boolean {
  const count = soFar[area] ?? 0;
  return area === "people" ? count < 2 : count === 0;
}
