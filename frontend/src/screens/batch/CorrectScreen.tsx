/** Correct a reading, a bowl, an instrument or an amount, with a reason. The old stays readable. */
import { useSignal } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { NumberField, SelectField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Budget } from "../../parts/NumberShown.tsx";
import { Part, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { correct, takeBack } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import type { Body, Entry } from "../../state/types.ts";
import { CORRECT_BATCH } from "../../text/finish.ts";
import { amountWords, clockWords } from "../../text/numbers.ts";
import { batchOf, instrumentsInUse, lineName, recipeNameOf } from "../common/batches.ts";
import { readingBudget } from "../common/budget.ts";
import { zone } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { BodyInQuestion } from "../common/InQuestion.tsx";
import { Instead } from "../common/Instead.tsx";
import { hindrance } from "../common/sentences.ts";
import { inForce } from "../common/standing.ts";
import { useFound } from "../common/use_found.ts";
import { useHeld } from "../common/use_held.ts";
import { canRead } from "../weigh-in/which_instrument.ts";
import { correctedBody, type NumberPlace, numbersOf } from "./correction.ts";

/** `#/correct/:batch/:entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { batch = "", entry = "" } = params;
  const shown = batchOf(batch);
  const held = useHeld(`batch:${batch}`, shown?.state);
  const found = held.value.find((each) => each.entry.id === entry);
  const body = inForce(held.value, entry);
  if (found === undefined || body === null) {
    return (
      <Instead
        where={CORRECT_BATCH.where}
        title={CORRECT_BATCH.where}
        benchName={CORRECT_BATCH.bench}
        back={`#/batch/${batch}`}
        on={{ words: CORRECT_BATCH.batch, href: `#/batch/${batch}` }}
        says={CORRECT_BATCH.not_here}
      />
    );
  }
  const title = shown === null ? CORRECT_BATCH.where : nameOfEntry(shown.state, entry);
  return <Correcting key={entry} batch={batch} entry={found.entry} body={body} title={title} />;
}

/** What the entry is about: the material of its line, else the product. */
function nameOfEntry(batch: BatchState, entry: string): string {
  const line = batch.lines.find((each) => each.weigh_ins.some((own) => own.entry === entry));
  return line === undefined ? recipeNameOf(batch) : lineName(line);
}

const LABELS: Record<string, string> = {
  "reading.shown": CORRECT_BATCH.shown,
  "reading.tare": CORRECT_BATCH.tare,
  "counted.amount": CORRECT_BATCH.counted,
  "amount.amount": CORRECT_BATCH.amount,
  "rejected.amount": CORRECT_BATCH.rejected,
};

/** The form's state: numbers as typed, the instrument, the reason, and the way out. */
function useCorrecting({ batch, entry, body }: { batch: string; entry: Entry; body: Body }) {
  const places = numbersOf(entry.kind, body);
  const typed = useSignal<Record<string, string>>(
    Object.fromEntries(places.map((place) => [place.key, place.value ?? ""])),
  );
  const instrument = useSignal("");
  const reason = useSignal("");
  const found = useFound(typed);
  const into = useSignal(places[0]?.key ?? "");
  const numbers = places.map((place) => ({
    ...place,
    value: typedNumber(typed.value[place.key] ?? ""),
  }));
  const other = instrumentsInUse(null).find((each) => each.id === instrument.value) ?? null;
  const isMissing = numbers.some((each) => each.value === null && !each.isOptional);
  const isSame =
    other === null && numbers.every((each, index) => each.value === (places[index]?.value ?? null));
  const why = isMissing
    ? CORRECT_BATCH.number_first
    : isSame
      ? CORRECT_BATCH.nothing_changed
      : reason.value.trim() === ""
        ? CORRECT_BATCH.reason_first
        : null;

  async function save() {
    const answer = await correct(
      entry.id,
      correctedBody(body, numbers, other),
      reason.value.trim(),
    );
    found.value = hindrance(answer);
    if (found.value === null) goTo(`/batch/${batch}`);
  }

  async function voidIt() {
    if (reason.value.trim() === "") return focusFirst("reason");
    found.value = hindrance(await takeBack(entry.id, reason.value.trim()));
    if (found.value === null) goTo(`/batch/${batch}`);
  }

  return { places, typed, instrument, reason, found, into, why, isMissing, save, voidIt };
}

function Correcting(props: { batch: string; entry: Entry; body: Body; title: string }) {
  const form = useCorrecting(props);
  const { typed, into } = form;
  return (
    <Frame
      where={CORRECT_BATCH.where}
      title={props.title}
      isRecorded
      aside={clockWords(props.entry.happened_at, zone())}
      gauge={<HeadGauge />}
      hasKeypad
      benchName={CORRECT_BATCH.bench}
      bench={
        <>
          <Keypad
            typed={typed.value[into.value] ?? ""}
            onTyped={(text) => {
              typed.value = { ...typed.value, [into.value]: text };
            }}
            isSigned={props.entry.kind === "step_done"}
          />
          <Foot>
            <BackKey href={`#/batch/${props.batch}`} />
            <MainKey
              words={CORRECT_BATCH.save}
              notReady={form.why}
              onNotReady={() => focusFirst(form.isMissing ? into.value : "reason")}
              onPress={() => void form.save()}
            />
          </Foot>
        </>
      }
      side={
        <>
          <Standing body={props.body} happened_at={props.entry.happened_at} />
          <p class="key-row">
            <Cup onPress={() => void form.voidIt()}>{CORRECT_BATCH.never_key}</Cup>
          </p>
        </>
      }
    >
      <Refusal sentence={form.found.value?.sentence ?? null} />
      {form.places.map((place) => (
        <Place key={place.key} place={place} form={form} />
      ))}
      <Instrument form={form} body={props.body} />
      <div id="field-reason">
        <TextField
          label={CORRECT_BATCH.reason}
          hint={CORRECT_BATCH.reason_hint}
          value={form.reason.value}
          onValue={(reason) => {
            form.reason.value = reason;
          }}
          lines={2}
        />
      </div>
    </Frame>
  );
}

/** The reading as it stands, with what it rests on. */
function Standing({ body, happened_at }: { body: Body; happened_at: string }) {
  const budget = readingBudget(body);
  if (budget === null) return null;
  return (
    <Part title={CORRECT_BATCH.stands}>
      <BodyInQuestion body={body} happened_at={happened_at} />
      <Budget lines={budget} />
    </Part>
  );
}

type Form = ReturnType<typeof useCorrecting>;

function Place({ place, form }: { place: NumberPlace; form: Form }) {
  return (
    <div id={`field-${place.key}`}>
      <NumberField
        label={LABELS[place.key] ?? place.name}
        typed={form.typed.value[place.key] ?? ""}
        unit={place.unit}
        hint={CORRECT_BATCH.was(amountWords(place.value, place.unit))}
        isOpen={form.into.value === place.key}
        onOpen={() => {
          form.into.value = place.key;
        }}
      />
    </div>
  );
}

function Instrument({ form, body }: { form: Form; body: Body }) {
  const unit = form.places[0]?.unit ?? null;
  const reading = body.reading;
  if (unit === null || typeof reading !== "object" || reading === null) return null;
  const used = "instrument" in reading ? String(reading.instrument) : "";
  const options = instrumentsInUse(null).filter((each) => canRead(each, unit));
  return (
    <SelectField
      label={CORRECT_BATCH.instrument}
      value={form.instrument.value || used}
      onValue={(id) => {
        form.instrument.value = id === used ? "" : id;
      }}
      options={[
        ...(used === "" ? [{ value: "", word: CORRECT_BATCH.no_instrument }] : []),
        ...options.map((each) => ({ value: each.id, word: each.name })),
      ]}
    />
  );
}
