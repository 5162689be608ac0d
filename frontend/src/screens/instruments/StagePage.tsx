/** One step of a check: a drawing of what to do, what it shows, and drops for each reading. */
import { CheckDrawing } from "../../parts/CheckDrawing.tsx";
import { Cup, MainKey } from "../../parts/Cup.tsx";
import { Keypad, type SideKey } from "../../parts/Keypad.tsx";
import { NumberShown } from "../../parts/NumberShown.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { CHECK, CORNER_WORDS, STAGES } from "../../text/checks.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { badReading } from "./bad_numbers.ts";
import { CheckFrame } from "./CheckFrame.tsx";
import { isVessel, type Stage } from "./plan.ts";
import type { Checking } from "./use_check.ts";

interface StageProps {
  checking: Checking;
  stage: Stage;
}

/** What one reads here: the vessel's water on a scale, anything else in its own unit. */
function unitRead({ instrument, scale }: Checking): string {
  return isVessel(instrument.sort) ? (scale?.unit ?? "g") : instrument.unit;
}

/** A stage to look at has no keypad. */
export function StagePage({ checking, stage }: StageProps) {
  const words = STAGES[stage.drawing] ?? STAGES[stage.sort] ?? STAGES.comparison;
  const readings = checking.typed.read[stage.key] ?? [];
  const at = amountWords(stage.reference?.value, checking.instrument.unit);
  const corner = stage.where[Math.min(readings.length, stage.where.length - 1)];
  return (
    <CheckFrame
      checking={checking}
      title={words?.title(at) ?? ""}
      plate={<Refusal sentence={badTyped(checking, stage)} />}
      keypad={stage.is === "read" && <Keys checking={checking} stage={stage} />}
      second={
        stage.is === "read" && readings.length < stage.reads ? (
          <Cup class="second-key" onPress={checking.goOn}>
            {CHECK.skip}
          </Cup>
        ) : null
      }
      main={<Main checking={checking} stage={stage} />}
    >
      <div class="check-stage">
        <CheckDrawing name={stage.drawing} says={words?.drawn ?? ""} at={corner} />
        <div class="check-read">
          <p class="check-look">{words?.look}</p>
          {stage.is === "read" && <Shown checking={checking} stage={stage} />}
          {stage.reads > 1 && <Drops stage={stage} readings={readings} />}
        </div>
      </div>
    </CheckFrame>
  );
}

/** What is typed, else the last reading that was kept here. */
function Shown({ checking, stage }: StageProps) {
  const { typed } = checking;
  const readings = typed.read[stage.key] ?? [];
  const kept = stage.reads === 1 ? readings[0] : undefined;
  return (
    <p class="check-shown">
      <NumberShown
        amount={typingOf(checking, stage) || kept || null}
        unit={unitRead(checking)}
        basis="plain"
        size="reading"
      />
    </p>
  );
}

/** A drop for each reading; they fill as the readings come. */
function Drops({ stage, readings }: { stage: Stage; readings: readonly string[] }) {
  const slots = Array.from({ length: Math.max(stage.reads, readings.length) }, (_, at) => at);
  return (
    <ol class="drops">
      {slots.map((at) => {
        const reading = readings[at];
        const corner = stage.where[at];
        return (
          <li key={at} class={reading === undefined ? "" : "full"}>
            <svg width="22" height="28" viewBox="0 0 22 28" aria-hidden="true">
              <path d="M11 2C6.5 8.3 4 12 4 16.5a7 7 0 0 0 14 0C18 12 15.5 8.3 11 2z" />
            </svg>
            <span>{figure(reading ?? null)}</span>
            {corner !== undefined && <span class="second">{CORNER_WORDS[corner]}</span>}
          </li>
        );
      })}
    </ol>
  );
}

function Keys({ checking, stage }: StageProps) {
  const { typed, type } = checking;
  const readings = typed.read[stage.key] ?? [];
  const last: SideKey = {
    word: CHECK.last_one,
    holds: figure(readings.at(-1) ?? null),
    onPress: () => {
      const rest = { ...typed.read, [stage.key]: readings.slice(0, -1) };
      type({ read: rest, typing: { ...typed.typing, [stage.key]: readings.at(-1) ?? "" } });
    },
  };
  return (
    <Keypad
      typed={typingOf(checking, stage)}
      onTyped={(text) => type({ typing: { ...typed.typing, [stage.key]: text } })}
      isSigned={!isVessel(checking.instrument.sort)}
      column={readings.length > 0 ? [last] : []}
      onEnter={() => keepTyped(checking, stage)}
    />
  );
}

/** What is typed on this page and not kept yet. */
function typingOf({ typed }: Checking, stage: Stage): string {
  return typed.typing[stage.key] ?? "";
}

function badTyped(checking: Checking, stage: Stage): string | null {
  return badReading(typingOf(checking, stage), stage, checking);
}

function keepTyped(checking: Checking, stage: Stage): void {
  const reading = typedNumber(typingOf(checking, stage));
  if (reading !== null && badTyped(checking, stage) === null) checking.keep(stage, reading);
}

function Main({ checking, stage }: StageProps) {
  if (stage.is === "look") return <MainKey words={CHECK.start_looking} onPress={checking.goOn} />;
  const reading = typedNumber(typingOf(checking, stage));
  const isFull = (checking.typed.read[stage.key] ?? []).length >= stage.reads;
  if (reading === null && isFull) return <MainKey words={CHECK.on_to} onPress={checking.goOn} />;
  return (
    <MainKey
      words={CHECK.keep(amountWords(reading, unitRead(checking)))}
      notReady={
        reading === null ? CHECK.read_first : badTyped(checking, stage) && CHECK.other_number
      }
      onPress={() => keepTyped(checking, stage)}
    />
  );
}
