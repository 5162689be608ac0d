/** Bring goods to the stall in the morning, take the rest back in the evening. */
import { useSignal } from "@preact/signals";
import { Caution } from "../../parts/Caution.tsx";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { NumberField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { remember, remembered } from "../../state/settings.ts";
import { nameOf, places, stockAt } from "../../state/stock.ts";
import { BRING, STALL } from "../../text/stall.ts";
import { freeFirst, lotSays } from "../common/against.ts";
import { choicesOf } from "../common/choices.ts";
import { DespiteField } from "../common/Despite.tsx";
import { type Drafted, useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { amountText, materialOf, placeSort } from "../common/lots.ts";
import { Picker } from "../common/Picker.tsx";
import { besideNone, hindrance } from "../common/sentences.ts";
import { asksWhy, BLANK, type BringTyped, missing, transferOf } from "./bring.ts";
import "./stall.css";
import { useFound } from "../common/use_found.ts";

const REMEMBERED = "stall.other";
const WAYS = [
  { value: "bring", word: BRING.bring },
  { value: "take", word: BRING.take },
] as const;

/** `params.place` is the stall. */
export function Screen({ params }: { params: Record<string, string> }) {
  const stall = params.place ?? "";
  return placeSort(stall) === null ? <NoSuchPlace /> : <Bring key={stall} stall={stall} />;
}

function NoSuchPlace() {
  return (
    <Frame
      where={BRING.where}
      title={BRING.where}
      gauge={<HeadGauge />}
      isStall
      benchName={BRING.bench}
      bench={
        <Foot>
          <BackKey href="#/stall" />
          <MainKey words={STALL.choose_title} href="#/stall" />
        </Foot>
      }
    >
      <Notice>{BRING.unknown}</Notice>
    </Frame>
  );
}

/** After saving the form is open for the next lot. */
function Bring({ stall }: { stall: string }) {
  const usual = remembered(REMEMBERED);
  const form = useDrafted<BringTyped>(`bring/${stall}`, {
    ...BLANK,
    other: typeof usual === "string" ? usual : "",
  });
  const found = useFound(form.typed);
  const done = useSignal<string | null>(null);
  const typed = form.typed.value;
  const lots = freeFirst(stockAt(typed.way === "bring" ? typed.other : stall));
  const lot = lots.find((each) => each.lot === typed.lot);
  const lacks = missing(typed);
  const words = amountText(typedNumber(typed.amount) ?? "0", lot?.unit ?? "pc");

  async function save() {
    if (lot === undefined) return;
    const answer = await record("transfer", transferOf(typed, stall, lot));
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    remember(REMEMBERED, typed.other);
    form.clear();
    form.type({ way: typed.way, other: typed.other });
    done.value = BRING.done(words, typed.lot);
    window.scrollTo(0, 0); // to the sentence that says it is kept
  }
  return (
    <Frame
      where={BRING.where}
      title={nameOf("place", stall)}
      isRecorded
      gauge={<HeadGauge />}
      isStall
      benchName={BRING.bench}
      hasKeypad
      bench={
        <>
          {lot !== undefined && (
            <Keypad
              typed={typed.amount}
              onTyped={(amount) => form.type({ amount })}
              isWhole={lot.unit === "pc"}
            />
          )}
          <Foot>
            <BackKey href="#/stall" />
            <MainKey
              words={BRING.save(words)}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => focusFirst(lacks?.field)}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, [])} />
      {done.value !== null && <Notice isLive>{done.value}</Notice>}
      <CupChoice
        name={BRING.ways}
        options={WAYS}
        chosen={typed.way === "take" ? "take" : "bring"}
        onChoose={(way) => form.type({ way, lot: "", amount: "" })}
      />
      <BringFields form={form} stall={stall} lots={lots} />
    </Frame>
  );
}

function BringFields(props: {
  form: Drafted<BringTyped>;
  stall: string;
  lots: ReturnType<typeof stockAt>;
}) {
  const { form, lots } = props;
  const typed = form.typed.value;
  const unit = lots.find((each) => each.lot === typed.lot)?.unit;
  return (
    <>
      <Picker
        field="other"
        label={BRING.other}
        items={choicesOf(places.value).filter((each) => each.id !== props.stall)}
        chosen={typed.other}
        onChoose={(other) => form.type({ other: other ?? "", lot: "" })}
        none={BRING.choose_place}
      />
      {typed.other !== "" && (
        <Picker
          field="lot"
          label={BRING.choose_lot}
          items={lots.map((each) => ({
            id: each.lot,
            name: materialOf(each.material)?.name ?? each.lot,
            sub: lotSays(each.lot),
            right: amountText(each.amount, each.unit, materialOf(each.material)),
          }))}
          chosen={typed.lot}
          onChoose={(lot) => form.type({ lot: lot ?? "", despite: "" })}
          none={BRING.none}
        />
      )}
      {typed.lot !== "" && asksWhy(typed) && (
        <DespiteField
          lots={[typed.lot]}
          reason={typed.despite}
          onReason={(despite) => form.type({ despite })}
        />
      )}
      {unit !== undefined && (
        <div id="field-amount">
          <NumberField
            label={BRING.bench}
            typed={typed.amount}
            unit={unit}
            isOpen
            onOpen={() => focusFirst("amount")}
          />
        </div>
      )}
      {typed.other !== "" && lots.length > 0 && <Caution about="shelf_life" />}
    </>
  );
}
