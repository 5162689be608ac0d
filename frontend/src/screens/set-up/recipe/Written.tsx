/** Lines and steps as they are written so far, each the way to its own page. */
import type { ComponentChildren } from "preact";
import { Cup } from "../../../parts/Cup.tsx";
import { Part } from "../../../parts/Plain.tsx";
import { typedNumber } from "../../../parts/typing.ts";
import { goTo } from "../../../state/route.ts";
import { nameOf } from "../../../state/stock.ts";
import { amountWords, figure, NOT_RECORDED, unitWord } from "../../../text/numbers.ts";
import {
  becomesWords,
  CHECKS,
  LINE,
  lineWords,
  RECIPE,
  STEP,
} from "../../../text/set_up_recipe.ts";
import { densityTable } from "../../common/density.ts";
import { lineAmount } from "./amounts.ts";
import { lineMissing } from "./publishing.ts";
import { BLANK_LINE, BLANK_STEP, type LineTyped, nextId, type StepTyped } from "./typed.ts";
import { lineMaterial, type RecipeAtWork } from "./use_recipe.ts";

interface WrittenProps {
  recipe: RecipeAtWork;
  canWrite: boolean;
}

/** What goes in, in its order. */
export function Lines({ recipe, canWrite }: WrittenProps) {
  const { typed, param } = recipe;
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
              <LineInside line={line} />
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

function LineInside({ line }: { line: LineTyped }) {
  const missing = lineMissing(line);
  return (
    <>
      <span class="choice-name">
        <span class="rec">
          {line.material === "" ? LINE.new_title : nameOf("material", line.material)}
        </span>
        {missing !== null && <span class="shout">{missing}</span>}
        {line.note !== "" && <span class="second">{line.note}</span>}
      </span>
      <span class="choice-right">{amountOf(line)}</span>
    </>
  );
}

/** As it will be published, and how it was written where that is another unit. */
function amountOf(line: LineTyped): string {
  const found = lineAmount(line, lineMaterial(line.material), densityTable.value);
  const written = amountWords(typedNumber(line.amount), line.amount_unit);
  if (found.is !== "ready") return line.amount === "" ? NOT_RECORDED : written;
  const words = lineWords(found.amount, found.unit, line.below, line.above);
  return found.by === null ? words : becomesWords(written, words);
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

function WrittenCup({ href, children }: { href: string | null; children: ComponentChildren }) {
  if (href === null) return <div class="written-read">{children}</div>;
  return (
    <Cup class="choice" href={`#/set-up/recipes/${href}`}>
      {children}
    </Cup>
  );
}
