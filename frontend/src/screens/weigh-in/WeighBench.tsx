/** The bench of weighing in: keypad and main key, or a second question in their place. */
import type { ComponentChildren } from "preact";
import { isUnit, UNITS } from "../../calc/units.ts";
import { type Choice, Choices } from "../../parts/Choices.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { lotsOf, nameOf } from "../../state/stock.ts";
import { FITNESS } from "../../text/fitness.ts";
import { againstWords, DESPITE } from "../../text/holds.ts";
import { amountWords, figure, ordinal, unitWord } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { againstAny, freeFirst, lacksReason } from "../common/against.ts";
import type { BatchLine, InstrumentShown } from "../common/batches.ts";
import { DespiteField } from "../common/Despite.tsx";
import { focusFirst } from "../common/focus.ts";
import { standingOf } from "../common/instruments.ts";
import { amountText } from "../common/lots.ts";
import { readingRefusal } from "./reading.ts";
import { saveWords } from "./says.ts";
import type { Weighing } from "./use_weighing.ts";
import { weighsOn } from "./which_instrument.ts";

/** What the bench asks now. */
export type Asking = "keys" | "instrument" | "lot" | "despite";

interface BenchProps {
  weighing: Weighing;
  line: BatchLine;
  asking: Asking;
  onAsk: (asking: Asking) => void;
  back: string;
}

const UNITS_READ = ["g", "kg", "oz", "lb", "mL", "L", "us_floz", "us_cup", "us_tbsp", "us_tsp"];

/** The next unit of the same dimension in which kitchens read. */
function nextUnit(unit: string): string {
  if (!isUnit(unit)) return unit;
  const dimension = UNITS.get(unit)?.dimension;
  const alike = UNITS_READ.filter((each) => UNITS.get(each)?.dimension === dimension);
  return alike[(alike.indexOf(unit) + 1) % Math.max(1, alike.length)] ?? unit;
}

/** Keys, or the choice of an instrument or a lot. */
export function WeighBench(props: BenchProps) {
  const { asking, onAsk, weighing } = props;
  if (asking === "instrument") {
    return (
      <Asked onBack={() => onAsk("keys")} words={WEIGH_IN.choose_instrument}>
        <Choices
          name={WEIGH_IN.choose_instrument}
          items={weighing.instruments.map((each) => ({
            id: each.id,
            name: each.name,
            isRecorded: false,
            sub: instrumentWords(each, props.line),
            right: each.division === null ? "" : amountWords(each.division, each.unit),
          }))}
          chosen={weighing.instrument?.id ?? null}
          onChoose={(instrument) => {
            weighing.type({ instrument, tare: "", unit: "" });
            onAsk("keys");
          }}
          none={WEIGH_IN.no_instruments}
        />
        {weighing.instrument !== null && (
          <Cup href={`#/instruments/${weighing.instrument.id}`}>
            {WEIGH_IN.sheet_of(weighing.instrument.name)}
          </Cup>
        )}
      </Asked>
    );
  }
  if (asking === "lot") {
    return (
      <Asked onBack={() => onAsk("keys")} words={WEIGH_IN.choose_lot}>
        <Choices
          name={WEIGH_IN.choose_lot}
          items={lotChoices(props.line)}
          chosen={weighing.lot}
          onChoose={(lot) => {
            weighing.type({ lot, despite: "" });
            onAsk("keys");
          }}
          none={WEIGH_IN.no_lots}
        />
      </Asked>
    );
  }
  if (asking === "despite") return <WhyAllTheSame {...props} />;
  return <Keys {...props} />;
}

/** The lot is held, recalled or past its date: the reason it is used all the same. */
function WhyAllTheSame({ weighing, onAsk }: BenchProps) {
  const lots = [weighing.lot ?? ""];
  const { despite } = weighing.typed;
  return (
    <>
      <DespiteField
        lots={lots}
        reason={despite}
        onReason={(reason) => weighing.type({ despite: reason })}
      />
      <Foot>
        <BackKey onPress={() => onAsk("lot")} name={DESPITE.another} />
        <MainKey
          words={DESPITE.do(WEIGH_IN.weigh)}
          notReady={lacksReason(lots, despite) ? DESPITE.first : null}
          onNotReady={() => focusFirst("despite")}
          onPress={() => onAsk("keys")}
        />
      </Foot>
    </>
  );
}

function instrumentWords(each: InstrumentShown, line: BatchLine): string {
  const words = `${WEIGH_IN.weighs[weighsOn(each, line)]}, ${FITNESS[standingOf(each.id).is]}`;
  return each.is_here || each.place === null ? words : `${words}, ${nameOf("place", each.place)}`;
}

function lotChoices(line: BatchLine): Choice[] {
  const stocked = freeFirst(lotsOf(line.material ?? ""));
  const gone = line.laid_out.filter((code) => !stocked.some((each) => each.lot === code));
  const choices = stocked.map((each) => ({
    id: each.lot,
    name: each.lot,
    isRecorded: false,
    sub: [
      line.laid_out.includes(each.lot) ? WEIGH_IN.laid_out : "",
      againstWords(againstAny([each.lot])),
    ]
      .filter(Boolean)
      .join(", "),
    right: WEIGH_IN.left(amountText(each.amount, each.unit)),
  }));
  return [
    ...choices,
    ...gone.map((lot) => ({ id: lot, name: lot, isRecorded: false, sub: WEIGH_IN.laid_out })),
  ];
}

function Asked(props: { words: string; onBack: () => void; children: ComponentChildren }) {
  return (
    <>
      <p class="asks">{props.words}</p>
      <div class="bench-list">{props.children}</div>
      <Foot>
        <BackKey onPress={props.onBack} />
      </Foot>
    </>
  );
}

function Keys({ weighing, onAsk, back }: BenchProps) {
  const { typed, type, isCounted } = weighing;
  const isTare = typed.into === "tare";
  const column = [
    {
      word: WEIGH_IN.bowl,
      holds: typed.tare === "" ? WEIGH_IN.no_bowl : figure(typed.tare),
      isOn: isTare,
      onPress: () => type({ into: isTare ? "shown" : "tare", tare: typed.tare }),
    },
    {
      word: WEIGH_IN.repeat,
      holds: ordinal(typed.repeats.length + 1),
      onPress: () => {
        const read = typedNumber(typed.shown);
        if (read !== null) type({ repeats: [...typed.repeats, read], shown: "" });
        else type({ shown: typed.repeats.at(-1) ?? "", repeats: typed.repeats.slice(0, -1) });
      },
    },
    {
      word: WEIGH_IN.unit,
      holds: unitWord(typed.unit),
      onPress: () => type({ unit: nextUnit(typed.unit) }),
    },
  ];
  return (
    <>
      <Keypad
        typed={isTare ? typed.tare : typed.shown}
        onTyped={(text) => type(isTare ? { tare: text } : { shown: text })}
        column={isCounted ? [] : column}
        isWhole={isCounted}
        onEnter={() => void weighing.save()}
      />
      <Foot>
        <BackKey href={back} name={WEIGH_IN.all_lines} />
        {isTare ? <BowlKey weighing={weighing} /> : <SaveKey weighing={weighing} onAsk={onAsk} />}
      </Foot>
    </>
  );
}

function BowlKey({ weighing }: { weighing: Weighing }) {
  const { typed, type } = weighing;
  const tare = typedNumber(typed.tare);
  return (
    <MainKey
      words={
        tare === null ? WEIGH_IN.without_bowl : WEIGH_IN.keep_bowl(amountWords(tare, typed.unit))
      }
      onPress={() => type({ tare: tare ?? "0", into: "shown" })}
    />
  );
}

function SaveKey({ weighing, onAsk }: { weighing: Weighing; onAsk: (asking: Asking) => void }) {
  const { weighed, typed, isCounted, body, lot, instrument } = weighing;
  const isRead = weighed !== null && weighed.net !== null;
  const why = !isRead
    ? isCounted
      ? WEIGH_IN.not_counted
      : WEIGH_IN.not_typed
    : lot === null
      ? WEIGH_IN.lot_first
      : !isCounted && instrument === null
        ? WEIGH_IN.instrument_first
        : lacksReason([lot], typed.despite)
          ? DESPITE.says(lot, againstWords(againstAny([lot])))
          : refusedWhy(body, instrument);
  return (
    <MainKey
      words={isRead ? saveWords(weighed, typed.unit) : ""}
      notReady={why}
      onNotReady={() => {
        if (lot === null) onAsk("lot");
        else if (!isCounted && instrument === null) onAsk("instrument");
        else if (isRead && lacksReason([lot], typed.despite)) onAsk("despite");
      }}
      onPress={() => void weighing.save()}
    />
  );
}

function refusedWhy(body: Weighing["body"], instrument: Weighing["instrument"]): string | null {
  const refusal = readingRefusal(body, instrument);
  if (refusal === "below_bowl") return WEIGH_IN.read_again;
  return refusal === "over_capacity" ? WEIGH_IN.two_parts : null;
}
