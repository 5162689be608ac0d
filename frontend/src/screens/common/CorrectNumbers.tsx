/** Corrects the numbers, the note or the moment of an entry, or voids it, with a reason. The old ones stay readable. */
import type { ComponentChildren } from "preact";
import { type Body, textIn } from "../../calc/bodies.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { DayField, FieldGroup, NumberField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { correct, move, takeBack } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { sheet } from "../../state/sheets.ts";
import { CORRECT } from "../../text/correct.ts";
import { amountWords } from "../../text/numbers.ts";
import { type Typed, useDrafted } from "./drafted.ts";
import { nowMs } from "./edge.ts";
import { focusFirst } from "./focus.ts";
import { HeadGauge } from "./HeadGauge.tsx";
import { BodyInQuestion } from "./InQuestion.tsx";
import { movedTo } from "./moments.ts";
import { isChangedIn, lackingIn, type NumberIn, withNote, withNumbers } from "./numbers_in.ts";
import { beside, besideNone, hindrance } from "./sentences.ts";
import { inForce } from "./standing.ts";
import { useFound } from "./use_found.ts";
import { useHeld } from "./use_held.ts";

const REASON_CHARS_MAX = 600;
const NOTE_CHARS_MAX = 600;
const NUMBER = { value: "number", word: CORRECT.wrong_number };
const MOMENT = { value: "moment", word: CORRECT.wrong_moment };
const NEVER = { value: "never", word: CORRECT.never };

interface CorrectNumbersProps {
  subject: string;
  entry: string;
  title: string;
  /** Where to go back to, such as `/lot/MJ-1`. */
  back: string;
  numbersOf: (body: Body) => NumberIn[];
  /** When it happened matters by itself, and can be wrong. */
  isDated?: boolean;
  /** The caution about the numbers, where they touch health. */
  caution?: ComponentChildren;
}

type NumbersTyped = Typed & {
  wrong: string;
  open: string;
  numbers: { [path: string]: string };
  /** Null while it is as it was. */
  note: string | null;
  reason: string;
  /** Null while it is as it was. */
  day: string | null;
  clock: string | null;
};

/** Says so where this phone does not hold the entry, or it no longer stands. */
export function CorrectNumbers(props: CorrectNumbersProps) {
  const { subject, entry, title, back } = props;
  const held = useHeld(subject, sheet<unknown>(subject).value);
  const body = inForce(held.value, entry);
  const happened_at = held.value.find((each) => each.entry.id === entry)?.entry.happened_at ?? "";
  if (body !== null) return <Form key={entry} {...props} {...{ body, happened_at }} />;
  return (
    <Frame
      where={CORRECT.where}
      title={title}
      isRecorded
      benchName={CORRECT.bench}
      bench={
        <Foot>
          <BackKey href={`#${back}`} />
          <span />
        </Foot>
      }
    >
      <Notice>{CORRECT.not_held}</Notice>
    </Frame>
  );
}

type FormProps = CorrectNumbersProps & { body: Body; happened_at: string };

function useCorrectedNumbers({ entry, back, numbersOf, body, happened_at }: FormProps) {
  const numbers = numbersOf(body);
  const open = numbers[0]?.path ?? "";
  const asItWas = { note: null, day: null, clock: null };
  const blank = { wrong: "number", open, numbers: {}, reason: "", ...asItWas };
  const form = useDrafted<NumbersTyped>(`correct/${entry}`, blank);
  const found = useFound(form.typed);
  const typed = form.typed.value;
  const isVoid = typed.wrong === "never";
  const isMoved = typed.wrong === "moment";
  const moved = movedTo(typed, { happened_at, now_ms: nowMs() });
  const noteWas = textIn(body, "note") ?? "";
  const note = typed.note ?? noteWas;
  const isChanged = isChangedIn(numbers, typed.numbers) || note.trim() !== noteWas;
  const lacking = isVoid || isMoved ? null : lackingIn(numbers, typed.numbers);
  const why = hinders({ typed, lacking, isChanged, moved: moved.why });

  async function save() {
    const reason = typed.reason.trim();
    const answer = isMoved
      ? await move(entry, { happened_at: moved.at, reason, form: `correct/${entry}` })
      : isVoid
        ? await takeBack(entry, reason)
        : await correct(entry, withNote(withNumbers(body, typed.numbers, numbers), note), reason);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    form.clear();
    goTo(back);
  }

  function toWhatLacks() {
    if (lacking !== null) form.type({ open: lacking.path });
    focusFirst(lacking === null ? "reason" : undefined);
  }

  const { type } = form;
  const shown = { found: found.value, note, wall: moved.wall };
  return { numbers, typed, type, ...shown, isVoid, isMoved, why, save, toWhatLacks };
}

/** Why it cannot be saved yet. */
function hinders(given: {
  typed: NumbersTyped;
  lacking: NumberIn | null;
  isChanged: boolean;
  moved: keyof typeof CORRECT.moments | null;
}): string | null {
  const { typed, lacking, isChanged, moved } = given;
  if (lacking !== null) return CORRECT.not_a_number(lacking.name);
  if (typed.wrong === "moment" && moved !== null) return CORRECT.moments[moved];
  if (typed.wrong === "number" && !isChanged) return CORRECT.nothing;
  return typed.reason.trim() === "" ? CORRECT.type_reason : null;
}

function Form(props: FormProps) {
  const form = useCorrectedNumbers(props);
  const { typed, type, isVoid, isMoved } = form;
  const areNumbers = !isVoid && !isMoved;
  const open = form.numbers.find((each) => each.path === typed.open);
  return (
    <Frame
      where={CORRECT.where}
      title={props.title}
      isRecorded
      gauge={<HeadGauge />}
      benchName={CORRECT.bench}
      hasKeypad
      bench={
        <>
          {areNumbers && open !== undefined && (
            <Keypad
              key={open.path}
              typed={typed.numbers[open.path] ?? open.value}
              onTyped={(text) => type({ numbers: { ...typed.numbers, [open.path]: text } })}
              isSigned={open.value !== ""}
            />
          )}
          <Foot>
            <BackKey href={`#${props.back}`} />
            <MainKey
              words={isVoid ? CORRECT.save_void : CORRECT.save}
              notReady={form.why}
              onNotReady={form.toWhatLacks}
              onPress={() => void form.save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(form.found, ["reason", "note"])} />
      <FieldGroup label={CORRECT.choose}>
        <CupChoice
          name={CORRECT.choose}
          options={props.isDated ? [NUMBER, MOMENT, NEVER] : [NUMBER, NEVER]}
          chosen={typed.wrong}
          onChoose={(wrong) => type({ wrong })}
        />
      </FieldGroup>
      <div id="field-reason">
        <TextField
          label={CORRECT.reason}
          hint={CORRECT.reason_hint}
          value={typed.reason}
          onValue={(reason) => type({ reason })}
          mostChars={REASON_CHARS_MAX}
          refusal={beside(form.found, "reason")}
        />
      </div>
      {isMoved && <Moment form={form} />}
      <BodyInQuestion body={props.body} happened_at={props.happened_at} />
      {areNumbers && (
        <>
          <Numbers form={form} />
          <TextField
            label={CORRECT.note}
            value={form.note}
            onValue={(note) => type({ note })}
            mostChars={NOTE_CHARS_MAX}
            refusal={beside(form.found, "note")}
          />
        </>
      )}
      {props.caution}
    </Frame>
  );
}

/** When it happened, as the wall showed it. */
function Moment({ form: { wall, type } }: { form: ReturnType<typeof useCorrectedNumbers> }) {
  return (
    <>
      <p class="second">{CORRECT.moment_why}</p>
      <div class="two-fields">
        <DayField label={CORRECT.on_day} value={wall.day} onValue={(day) => type({ day })} />
        <DayField
          label={CORRECT.at_clock}
          value={wall.clock}
          onValue={(clock) => type({ clock })}
          isClock
        />
      </div>
    </>
  );
}

/** Each with what it was, once it is another. */
function Numbers({ form }: { form: ReturnType<typeof useCorrectedNumbers> }) {
  const { numbers, typed, type } = form;
  return (
    <Part title={CORRECT.numbers}>
      <p class="second">{CORRECT.numbers_why}</p>
      {numbers.map(({ path, name, unit, value }) => {
        const text = typed.numbers[path] ?? value;
        return (
          <NumberField
            key={path}
            label={name}
            typed={text}
            unit={unit}
            hint={text === value ? undefined : CORRECT.was(amountWords(value, unit))}
            isOpen={typed.open === path}
            onOpen={() => type({ open: path })}
          />
        );
      })}
    </Part>
  );
}
