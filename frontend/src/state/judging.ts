/** All folds, with those the road does without, as one part of the app: loading it takes them in. */

import type { AskedState } from "../calc/asked_prices.ts";
import type { DefinitionState } from "../calc/definitions.ts";
import { FOLDS } from "../calc/folds.ts";
import type { InstrumentState } from "../calc/instruments.ts";
import type { CostState, RatesState } from "../calc/money.ts";
import type { SkillState } from "../calc/skills.ts";
import { takeInFolds } from "./folding.ts";
import { definitionOnTop, type OnTop, takeInOnTop } from "./on_top.ts";
import { checksOnTop } from "./on_top_instrument.ts";
import { askedOnTop, costOnTop, ratesOnTop } from "./on_top_money.ts";
import type { Beyond } from "./on_top_parts.ts";
import { skillOnTop } from "./on_top_skill.ts";

takeInFolds(FOLDS);
takeInOnTop(
  // The server's fold made each state, of the form of its type.
  new Map<string, OnTop>([
    ["skill", (subject, state, beyond) => skillOnTop(subject, state as SkillState, beyond)],
    ["cost", (subject, state, beyond) => costOnTop(subject, state as CostState, beyond)],
    ["rates", (subject, state, beyond) => ratesOnTop(subject, state as RatesState, beyond)],
    ["asked", (subject, state, beyond) => askedOnTop(subject, state as AskedState, beyond)],
    [
      "instrument",
      (subject, state, beyond) => instrumentOnTop(subject, state as InstrumentState, beyond),
    ],
  ]),
);

/** Its definition as any other's; findings of own failed checks come with them. */
function instrumentOnTop(subject: string, state: InstrumentState, beyond: Beyond): InstrumentState {
  const definition: DefinitionState = definitionOnTop(subject, state, beyond);
  const whole = { ...state, ...definition };
  return { ...whole, ...checksOnTop(subject, whole, beyond) };
}
