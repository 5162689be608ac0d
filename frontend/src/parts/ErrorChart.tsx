/** Errors between their limits: one column each, a whisker for the doubt, a band for what is allowed. */
import { AsList } from "./AsList.tsx";
import { Chart } from "./Chart.tsx";

/** One error in the unit of the chart; `reach` is what a verdict allows for, `words` the same in text. */
export interface ErrorShown {
  id: string;
  name: string;
  error: number;
  reach: number | null;
  limit: number | null;
  isOutside: boolean;
  words: string;
}

const MOST = 12; // more columns run together on a phone; the list has all of them

/** The last ones, the newest at the right. */
export function ErrorChart({ errors, says }: { errors: readonly ErrorShown[]; says: string }) {
  if (errors.length === 0) return null;
  return (
    <>
      <Chart
        points={errors.slice(-MOST).map(({ id, name, error, reach, limit, isOutside }) => ({
          id,
          name,
          value: error,
          reach,
          low: limit === null ? null : -limit,
          high: limit,
          isMarked: isOutside,
        }))}
        centre={0}
        says={says}
      />
      <AsList
        rows={errors.map(({ name, words }, at) => ({ name: `${at + 1}. ${name}`, value: words }))}
      />
    </>
  );
}
