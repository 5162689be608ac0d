/** What costs and prices are reckoned with, from a day on: pay, overhead, the price proposal. */
import { useSignal } from "@preact/signals";
import { textIn } from "../../calc/bodies.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { DayField, FieldGroup, NumberField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { record } from "../../state/record.ts";
import { current } from "../../state/session.ts";
import { MONEY, PRICE, RATES } from "../../text/money.ts";
import { useDrafted } from "../common/drafted.ts";
import { today } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { besideNone, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { currency, isCoordinator, ratesInForce, seesCosts } from "./costs.ts";
import { EarnFields, type EarnNumber } from "./EarnFields.tsx";
import { askedFrom } from "./proposal.ts";
import { type RatesTyped, ratesBody, ratesMissing } from "./typed.ts";

type Open = "pay" | "rate" | EarnNumber;

/** `#/set-up/rates`. */
export function Screen() {
  return seesCosts() ? <Form /> : <Hidden />;
}

function Hidden() {
  return (
    <Instead
      where={RATES.why}
      title={RATES.title}
      benchName={RATES.bench}
      back="#/set-up"
      says={MONEY.hidden}
    />
  );
}

/** What is in force today, as it would be typed. */
function inForce(): RatesTyped {
  const rates = ratesInForce(today());
  const overhead = { ...(typeof rates.overhead === "object" ? rates.overhead : {}) };
  const asked = askedFrom(null, rates);
  return {
    since: today(),
    pay: textIn(rates, "pay_per_hour") ?? "",
    by: textIn(overhead, "by") ?? "none",
    rate: textIn(overhead, "rate") ?? "",
    percent_of: textIn(overhead, "percent_of") ?? "materials",
    of: asked.of,
    percent: asked.percent,
    commission: asked.commission,
    coin: asked.coin,
    rule: asked.rule,
  };
}

function Form() {
  const form = useDrafted<RatesTyped>("set-up/rates", inForce());
  const open = useSignal<Open>("pay");
  const found = useFound(form.typed);
  const saved = useFound<boolean>(form.typed);
  const typed = form.typed.value;

  const lacks = ratesMissing(typed);

  async function save() {
    const body = ratesBody(typed, current.value?.cooperative.id ?? "");
    const answer = await record("rates_set", body);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field);
    form.clear(typed);
    saved.value = true;
  }

  return (
    <Frame
      where={RATES.why}
      title={RATES.title}
      gauge={<HeadGauge />}
      benchName={RATES.bench}
      hasKeypad
      bench={
        <>
          <Keypad
            typed={typed[open.value] ?? ""}
            onTyped={(number) => form.type({ [open.value]: number })}
          />
          <Foot>
            <BackKey href="#/set-up" />
            <MainKey
              words={RATES.save}
              notReady={isCoordinator() ? (lacks?.sentence ?? null) : PRICE.only_coordinators}
              onNotReady={() => {
                open.value = lacks?.field ?? open.value;
              }}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      {saved.value === true && <Notice isLive>{RATES.saved}</Notice>}
      <Refusal sentence={besideNone(found.value, [])} />
      <p class="second">{RATES.who}</p>
      <DayField label={RATES.since} value={typed.since} onValue={(since) => form.type({ since })} />
      <Numbers
        typed={typed}
        type={form.type}
        open={open.value}
        onOpen={(at) => (open.value = at)}
      />
    </Frame>
  );
}

function Numbers(props: {
  typed: RatesTyped;
  type: (part: Partial<RatesTyped>) => void;
  open: Open;
  onOpen: (at: Open) => void;
}) {
  const { typed, type, open, onOpen } = props;
  const number = (at: Open, label: string, unit: string | null) => (
    <NumberField
      label={label}
      typed={typed[at] ?? ""}
      unit={unit}
      isOpen={open === at}
      onOpen={() => onOpen(at)}
    />
  );
  return (
    <>
      {number("pay", RATES.pay, currency())}
      <FieldGroup label={RATES.by}>
        <CupChoice
          name={RATES.by}
          options={RATES.by_words}
          chosen={RATES.by_words.find((each) => each.value === typed.by)?.value ?? "none"}
          onChoose={(by) => type(by === typed.by ? {} : { by, rate: "" })}
        />
      </FieldGroup>
      {typed.by === "percent" && (
        <FieldGroup label={RATES.percent_of}>
          <CupChoice
            name={RATES.percent_of}
            options={RATES.bases}
            chosen={RATES.bases.find((each) => each.value === typed.percent_of)?.value ?? null}
            onChoose={(percent_of) => type({ percent_of })}
          />
        </FieldGroup>
      )}
      {typed.by === "percent" && number("rate", RATES.percent, "%")}
      {typed.by in RATES.rate && number("rate", RATES.rate[typed.by] ?? "", currency())}
      <Part title={RATES.proposal}>
        <EarnFields typed={typed} onTyped={type} open={open} onOpen={onOpen} />
      </Part>
    </>
  );
}
