/** Words of a budget: what a number rests on. */
import { ordinal } from "./numbers.ts";

export const BUDGET = {
  one_sided: (factor: string) => `${factor}, one-sided, 95 %`,
  read: (count: number) => `${ordinal(count)} reading`,
  bowl: "Bowl",
  step: "Smallest step",
  repeatability: "Repeatability",
  from_display: "From the display, u",
  from_spread: "From the spread of readings, u",
  from_correction: "From the correction, u",
  from_beyond: "From the correction, stretched, u",
  plus: (formula: string) => `${formula} + correction`,
  not_known: "not known",
  less_bowl: (shown: string, bowl: string) => `${shown} \u2212 ${bowl}`,
  mean_of: (count: number) => `mean of ${count}`,
  reading_source: "JCGM 100: a step / \u221a12 for each reading, and the repeatability",
};
