/** A drill in words for a history, and its readings that can be corrected. */
import { type Body, itemsIn, objectIn, textIn, textsIn } from "../../calc/bodies.ts";
import type { Standing } from "../../calc/record.ts";
import { countWords, figure } from "../../text/numbers.ts";
import { SKILLS, SORT_WORDS } from "../../text/skills.ts";
import type { EntryWords } from "../common/history.ts";
import { listIn, type NumberIn } from "../common/numbers_in.ts";

/** How many were read; what they say stands above the history. */
export function drillWords({ body }: Standing): EntryWords {
  return {
    did: SKILLS.drill_done,
    amount: readTexts(body).map(figure).join(" \u00b7 "),
    says: countWords(itemsIn(body, "questions").length, "reading"),
  };
}

function readTexts(body: Body): string[] {
  return itemsIn(body, "questions").map((question) => textIn(question, "read") ?? "");
}

/** What was read, question by question, and what was weighed; never what was drawn. */
export function drillNumbers(body: Body): NumberIn[] {
  const read = itemsIn(body, "questions").map((question, at) => ({
    path: `questions.${at}.read`,
    name: `${at + 1}. ${SORT_WORDS[textIn(question, "sort") ?? ""] ?? ""}`,
    unit: null,
    value: textIn(question, "read") ?? "",
    isOptional: false,
  }));
  const weighing = objectIn(body, "weighing") ?? {};
  return [
    ...read,
    ...listIn(textsIn(weighing, "shown"), {
      path: "weighing.shown",
      unit: textIn(weighing, "unit"),
      name: (number) => SKILLS.weighed_time(number),
    }),
  ];
}
