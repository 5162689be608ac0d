/** Words of a fill check: packs weighed against their label. */
import { amountWords, countWords, figure } from "./numbers.ts";

export const FILL = {
  where: (lot: string) => `Fill check, ${lot}`,
  bench: "Weigh the packs",
  label: "The label says",
  declared: "Net content",
  other: "The same in another unit, if it is there",
  rules: "Rules of the check",
  us: "US, HB 133",
  eu: "EU, 76/211",
  dries: "It is flour or dry pasta",
  dries_why: "They dry on the shelf: the rules allow 3 % of the label.",
  moisture: "what may dry away",
  scale: "Scale",
  no_scale: "Another scale",
  lot_size: "Packs in this lot",
  density: "What 1 mL weighs, in g",
  empty: "Empty packs",
  full: "Full packs",
  packs: "Weigh them",
  weigh_empty: "Two or more, one after another, each without its content.",
  plan: (of: number, size: string) => `The plan asks for ${of} of ${size} packs.`,
  no_plan: "Say how many packs the lot has. Then the plan says how many to weigh.",
  none_yet: "none yet",
  keep_empty: (amount: string) => `Keep empty ${amount}`,
  keep_full: (amount: string, number: number) => `Keep pack ${number}: ${amount}`,
  save: (count: number) => `Save ${countWords(count, "pack")}`,
  take_last: "take out",
  say_label: "Type what the label says",
  say_rules: "Choose the rules",
  say_density: "Type what 1 mL weighs",
  say_empty: "Weigh 2 empty packs first",
  say_full: "Weigh a full pack first",
  corrected: "Every mass is corrected by what the check of its scale found.",
  would_be: (verdict: string) => `The verdict would be: ${verdict}`,
  pack: (number: number) => `Full pack ${number}`,
  empty_pack: (number: number) => `Empty pack ${number}`,
  last: "Last fill check",
  earlier: (count: number) => `${countWords(count, "earlier check")} of this lot.`,
  mav: "how short one pack may be",
  pack_plan: "how many packs are weighed",
  batch_plan: "how many packs are weighed",
  t: "how short one pack may be",
  t_rounded_up: "how that is rounded",
  mav_band: "for which labels it holds",
};

/** Why nothing is decided, or what is wrong: one sentence each. */
const REASONS: Record<string, string> = {
  mav_disputed: "Two recollections of the table differ for this label.",
  scale_too_coarse: "The scale's steps are too wide for these packs. Take a finer one.",
  too_few_tares: "Weigh another empty pack.",
  sample_too_large: "More packs were weighed than the plan asks for.",
  sample_unfinished: "Weigh the rest of the packs.",
  second_sample_needed: "The first packs cannot tell. Weigh as many again.",
  mean_not_known: "The mean needs more packs.",
  no_figures: "The tables here do not hold such packs.",
  no_density: "A label by volume needs what 1 mL weighs.",
  nothing_weighed: "No empty or no full pack was weighed.",
  unreadable: "A number cannot be read.",
};

/** What a mean is and what it may be, in texts of one unit. */
export interface FillSaid {
  mean: string;
  allowed: string | null;
  most_short: string;
  short: readonly number[];
  unit: string;
  reasons: readonly string[];
}

/** "The mean is 0.6 g short; allowed 0.8 g. None short beyond 16.3 g." */
export function fillSentence(said: FillSaid): string {
  const { unit, short } = said;
  const allowed = said.allowed === null ? "" : `; allowed ${amountWords(said.allowed, unit)}`;
  const size = amountWords(said.mean.replace("-", ""), unit);
  const mean = said.mean.startsWith("-")
    ? `The mean is ${size} short${allowed}.`
    : `The mean is ${size} over.`;
  const beyond = amountWords(said.most_short, unit);
  const packs =
    short.length === 0
      ? `None short beyond ${beyond}.`
      : `Short beyond ${beyond}: ${numbered(short)}.`;
  return [mean, packs, reasonWords(said.reasons)].filter(Boolean).join(" ");
}

/** Every reason that is not told by the figures themselves. */
export function reasonWords(reasons: readonly string[]): string {
  return reasons.flatMap((each) => REASONS[each] ?? []).join(" ");
}

/** "packs 4, 5 and 9"; counted from 1 as a person does. */
function numbered(places: readonly number[]): string {
  const numbers = places.map((place) => figure(String(place + 1)));
  const last = numbers.pop();
  return numbers.length === 0 ? `pack ${last}` : `packs ${numbers.join(", ")} and ${last}`;
}
