/** The end of a check: the sentence, the correction it found, when it was made, saving it. */

import { citedIn } from "../../calc/checks.ts";
import { U_DIGITS, writtenPoints } from "../../calc/instrument_checks.ts";
import { significant } from "../../calc/numbers.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { MainKey } from "../../parts/Cup.tsx";
import { ErrorChart } from "../../parts/ErrorChart.tsx";
import { DayField, TickField } from "../../parts/Fields.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { CHECK } from "../../text/checks.ts";
import { CITED, VERDICT_WORDS } from "../../text/instruments.ts";
import { today } from "../common/edge.ts";
import { instrumentSheet } from "../common/instruments.ts";
import { Recalled } from "../common/Recalled.tsx";
import { CheckFrame } from "./CheckFrame.tsx";
import { linesFor, type Told } from "./check_body.ts";
import { stepByStep } from "./errors.ts";
import { lineWords, spreadWords } from "./line_words.ts";
import { saidOf } from "./said.ts";
import type { Checking } from "./use_check.ts";

const PLATES = { fit: "within", failed: "outside", cannot_tell: "cannot_tell" } as const;

/** Nothing is saved before the main key says so. */
export function ResultPage({ checking }: { checking: Checking }) {
  const told = checking.told();
  const { result, unit } = told;
  const isRead = result.points.length > 0;
  const hindered = checking.hindrance.value;
  const words = saidOf({ ...result, unit });
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.result}
      plate={
        hindered === null ? (
          <Verdict
            verdict={PLATES[result.verdict]}
            word={VERDICT_WORDS[result.verdict]}
            why={words}
            isLive
          />
        ) : (
          <Refusal sentence={hindered.sentence} />
        )
      }
      side={<AboutIt checking={checking} />}
      main={
        <MainKey
          words={result.verdict === "failed" ? CHECK.save_failed : CHECK.save}
          notReady={isRead ? null : CHECK.nothing_read}
          onNotReady={checking.goBack}
          onPress={() => void checking.save()}
        />
      }
    >
      <ErrorChart errors={stepByStep(writtenPoints(result, told.body), unit)} says={words} />
      <Recalled cited={citedIn(result)} names={CITED} />
      <CorrectionChoice checking={checking} told={told} />
    </CheckFrame>
  );
}

function CorrectionChoice({ checking, told }: { checking: Checking; told: Told }) {
  const { typed, type, instrument } = checking;
  const steps = Array.isArray(told.body.steps) ? told.body.steps : [];
  const lines = linesFor(steps);
  const isInForce = instrumentSheet(instrument.id)?.corrections.at(-1)?.line != null;
  if (lines.length === 0 || typed.is_adjusted) return null;
  const chosen = typeof told.body.line === "string" ? told.body.line : "";
  const { correction } = told;
  return (
    <Part title={CHECK.correct}>
      <CupChoice
        name={CHECK.correct}
        options={["", ...lines, ...(isInForce ? ["none"] : [])].map((value) => ({
          value,
          word: CHECK.lines[value] ?? value,
        }))}
        chosen={chosen}
        onChoose={(line) => type({ line })}
      />
      {correction !== null && (
        <Notice isLive>
          {correction.is_significant === true
            ? CHECK.will(lineWords(correction))
            : correction.is_significant === null
              ? CHECK.will_not_known
              : CHECK.will_not}
        </Notice>
      )}
      {told.result.repeatability !== null && (
        <p class="second">
          {spreadWords(significant(told.result.repeatability, U_DIGITS), told.unit)}
        </p>
      )}
    </Part>
  );
}

/** What nobody can read off it: adjusted or not, and when. */
function AboutIt({ checking }: { checking: Checking }) {
  return (
    <>
      <TickField
        label={CHECK.adjusted}
        hint={checking.typed.is_adjusted ? CHECK.adjusted_why : undefined}
        isTicked={checking.typed.is_adjusted}
        onTicked={(is_adjusted) => checking.type({ is_adjusted })}
      />
      <When checking={checking} />
    </>
  );
}

function When({ checking }: { checking: Checking }) {
  const { typed, type } = checking;
  return (
    <Part title={CHECK.when}>
      <p class="second">{CHECK.when_why}</p>
      <div class="two-fields">
        <DayField
          label={CHECK.day}
          value={typed.day}
          onValue={(day) => type({ day: earlier(day) })}
        />
        {typed.day !== "" && (
          <DayField
            label={CHECK.clock}
            value={typed.clock}
            onValue={(clock) => type({ clock })}
            isClock
          />
        )}
      </div>
    </Part>
  );
}

/** Nothing is checked in the future. */
function earlier(day: string): string {
  return day > today() ? today() : day;
}
