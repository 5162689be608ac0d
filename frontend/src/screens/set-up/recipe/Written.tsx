/** Lines and steps as they are written so far, each the way to its own page. */
import type { ComponentChildren } from "preact";
import { Cup } from "../../../parts/Cup.tsx";
import { Part } from "../../../parts/Plain.tsx";
import { typedNumber } from "../../../parts/typing.ts";
import { goTo } from "../../../state/route.ts";
import { nameOf } from "../../../state/stock.ts";
import { amountWords, figure, NOT_RECORDED, unitWord } from "../../../text/numbers.ts";
import { PACK, SHARE, SUB_RECIPE, YIELD } from "../../../text/recipe_lines.ts";
import {
  becomesWords,
  CHECKS,
  LINE,
  lineWords,
  RECIPE,
  STEP,
} from "../../../text/set_up_recipe.ts";
import { BLANK_LINE, BLANK_PACK, BLANK_STEP, type LineTyped, type StepTyped } from "./items.ts";
import { amountsNow, lineMissing } from "./publishing.ts";
import { type AmountOfLine, isShare } from "./shares.ts";
import { nextId } from "./typed.ts";
import { type RecipeAtWork, recipesOf } from "./use_recipe.ts";

interface WrittenProps {
  recipe: RecipeAtWork;
  canWrite: boolean;
}

/** What goes in, in its order. */
export function Lines({ recipe, canWrite }: WrittenProps) {
  const { typed, param } = recipe;
  const amounts = amountsNow(typed);
  function add() {
    const line = nextId(typed.lines.map((each) => each.line));
    recipe.type({ lines: [...typed.lines, { ...BLANK_LINE, line }] });
    goTo(`/set-up/recipes/${param}/line/${line}`);
  }
  return (
    <Part title={RECIPE.lines}>
      <ol class="written" id="field-lines">
        {typed.lines.map((line) => (
          <li key={line.line}>
            <WrittenCup href={canWrite ? `${param}/line/${encodeURIComponent(line.line)}` : null}>
              <LineInside line={line} found={amounts.get(line.line)} />
            </WrittenCup>
          </li>
        ))}
        {typed.lines.length === 0 && <li class="nothing">{RECIPE.no_lines}</li>}
        {canWrite && (
          <li>
            <Cup onPress={add}>{RECIPE.add_line}</Cup>
          </li>
        )}
      </ol>
    </Part>
  );
}

function LineInside({ line, found }: { line: LineTyped; found: AmountOfLine | undefined }) {
  const missing = lineMissing(line, found);
  const makers = recipesOf(line.material);
  return (
    <>
      <span class="choice-name">
        <span class="rec">
          {line.material === "" ? LINE.new_title : nameOf("material", line.material)}
        </span>
        {missing !== null && <span class="shout">{missing}</span>}
        {stateWords(line) !== "" && <span class="second">{stateWords(line)}</span>}
        {makers.length > 0 && (
          <span class="second">
            {SUB_RECIPE.made_by(makers.map(({ name }) => name).join(", "))}
          </span>
        )}
        {line.note !== "" && <span class="second">{line.note}</span>}
      </span>
      <span class="choice-right">{amountOf(line, found)}</span>
    </>
  );
}

/** `as bought, 71 % is left: pulp`; and whether it counts as the base. */
function stateWords(line: LineTyped): string {
  const states: Record<string, string> = { as_bought: YIELD.as_bought, prepared: YIELD.prepared };
  const left = line.yield_percent === "" ? "" : YIELD.is_left(amountWords(line.yield_percent, "%"));
  const parts = [
    line.is_base === "" ? "" : SHARE.is_base,
    states[line.state] ?? "",
    line.state === "" ? "" : left,
    line.state === "" ? "" : line.prepared_as,
  ];
  return parts.filter((words) => words !== "").join(", ");
}

/** As it will be published, and how it was written where that is another unit or a share. */
function amountOf(line: LineTyped, found: AmountOfLine | undefined): string {
  const written = isShare(line)
    ? amountWords(typedNumber(line.percent), "%")
    : amountWords(typedNumber(line.amount), line.amount_unit);
  if (found?.is !== "ready") return line.amount + line.percent === "" ? NOT_RECORDED : written;
  const words = lineWords(found.amount, found.unit, line.below, line.above);
  return found.by === null && !isShare(line) ? words : becomesWords(written, words);
}

/** What is done, in its order; a caution stands in full. */
export function Steps({ recipe, canWrite }: WrittenProps) {
  const { typed, param } = recipe;
  function add() {
    const step = nextId(typed.steps.map((each) => each.step));
    recipe.type({ steps: [...typed.steps, { ...BLANK_STEP, step }] });
    goTo(`/set-up/recipes/${param}/step/${step}`);
  }
  return (
    <Part title={RECIPE.steps}>
      <ol class="written" id="field-steps">
        {typed.steps.map((step, at) => (
          <li key={step.step}>
            <WrittenCup href={canWrite ? `${param}/step/${encodeURIComponent(step.step)}` : null}>
              <span class="number-of">{figure(String(at + 1))}</span>
              <StepInside step={step} />
            </WrittenCup>
          </li>
        ))}
        {typed.steps.length === 0 && <li class="nothing">{RECIPE.no_steps}</li>}
        {canWrite && (
          <li>
            <Cup onPress={add}>{RECIPE.add_step}</Cup>
          </li>
        )}
      </ol>
    </Part>
  );
}

function StepInside({ step }: { step: StepTyped }) {
  const limits = limitsOf(step);
  return (
    <span class="choice-name">
      <span class="rec">{step.says === "" ? STEP.new_title : step.says}</span>
      {step.measures !== "" && (
        <span class="second">
          {CHECKS[step.measures] ?? step.measures}
          {limits}
          {step.set_by !== "" && `, ${STEP.limit_by} ${step.set_by}`}
        </span>
      )}
      {step.minutes !== "" && (
        <span class="second">{STEP.takes(amountWords(step.minutes, "min"))}</span>
      )}
      {step.caution !== "" && <span class="written-caution">{step.caution}</span>}
    </span>
  );
}

function limitsOf({ low, high, unit }: StepTyped): string {
  const word = unitWord(unit);
  const parts = [
    low === "" ? "" : `${STEP.low.toLowerCase()} ${figure(low)} ${word}`,
    high === "" ? "" : `${STEP.high.toLowerCase()} ${figure(high)} ${word}`,
  ].filter((words) => words !== "");
  return parts.length === 0 ? "" : `: ${parts.join(", ")}`;
}

/** What it may be filled into. */
export function PackSizes({ recipe, canWrite }: WrittenProps) {
  const { typed, param } = recipe;
  function add() {
    const size = nextId(typed.pack_sizes.map((each) => each.size));
    recipe.type({ pack_sizes: [...typed.pack_sizes, { ...BLANK_PACK, size }] });
    goTo(`/set-up/recipes/${param}/pack/${size}`);
  }
  return (
    <Part title={PACK.title}>
      <ol class="written" id="field-pack_sizes">
        {typed.pack_sizes.map((pack) => (
          <li key={pack.size}>
            <WrittenCup href={canWrite ? `${param}/pack/${encodeURIComponent(pack.size)}` : null}>
              <span class="choice-name">
                <span class="rec">
                  {PACK.named(amountWords(pack.net, pack.net_unit), pack.word)}
                </span>
                {pack.packaging !== "" && (
                  <span class="second">{nameOf("material", pack.packaging)}</span>
                )}
              </span>
            </WrittenCup>
          </li>
        ))}
        {typed.pack_sizes.length === 0 && <li class="nothing">{PACK.none}</li>}
        {canWrite && (
          <li>
            <Cup onPress={add}>{PACK.add}</Cup>
          </li>
        )}
      </ol>
    </Part>
  );
}

function WrittenCup({ href, children }: { href: string | null; children: ComponentChildren }) {
  if (href === null) return <div class="written-read">{children}</div>;
  return (
    <Cup class="choice" href={`#/set-up/recipes/${href}`}>
      {children}
    </Cup>
  );
}
