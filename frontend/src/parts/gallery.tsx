/** All parts in their states, at `#/parts`: what one looks at before changing any of them. */

import { useSignal } from "@preact/signals";
import { GALLERY as WORDS } from "../text/gallery.ts";
import { BalancePicture } from "./BalancePicture.tsx";
import { Caution } from "./Caution.tsx";
import { Choices, CupChoice } from "./Choices.tsx";
import { BackKey, Cup, MainKey, SignCup } from "./Cup.tsx";
import { Dial } from "./Dial.tsx";
import { CorrectionRow, Entries, EntryRow, TwoCorrections } from "./EntryRow.tsx";
import { NumberField, TextField, TickField } from "./Fields.tsx";
import { Foot, Frame } from "./Frame.tsx";
import { Glass } from "./Glass.tsx";
import { Keypad } from "./Keypad.tsx";
import { LiquidSurface } from "./LiquidSurface.tsx";
import { LotTag } from "./LotTag.tsx";
import { NumberShown } from "./NumberShown.tsx";
import { Notice, Part } from "./Plain.tsx";
import { Qr } from "./Qr.tsx";
import { Rings } from "./Rings.tsx";
import { Spoon } from "./Spoon.tsx";
import { SIGNS, type SignName } from "./signs.ts";
import { TracePicture } from "./TracePicture.tsx";
import { Tube, Vessel } from "./Tube.tsx";
import { typedNumber } from "./typing.ts";
import { Verdict } from "./Verdict.tsx";
import { WaitingGauge } from "./WaitingGauge.tsx";

const isSign = (name: string): name is SignName => name in SIGNS;

function Numbers() {
  const budget = {
    value: "60.2 g",
    uncertainty: "0.1 g",
    coverage: "2",
    instrument: WORDS.scale,
    formula: WORDS.formula,
  };
  return (
    <p class="gallery-row">
      <NumberShown amount="66" unit="pc" basis="counted" size="net" />
      <NumberShown amount="10004" unit="g" basis="measured" uncertainty="2" size="net" />
      <NumberShown
        amount="60.2"
        unit="g"
        basis="measured"
        uncertainty="0.1"
        budget={budget}
        size="net"
      />
      <NumberShown amount="94.5" unit="%" basis="computed" size="net" />
      <NumberShown amount="312" unit="g" basis="booked" size="net" />
      <NumberShown amount={null} unit="g" basis="measured" size="net" />
    </p>
  );
}

function ToBeRead() {
  const dial = { low: "0", high: "500", division: "5", numbered: "50" };
  const cylinder = { low: "0", high: "100", division: "1", numbered: "10" };
  return (
    <div class="gallery-stack">
      <Dial scale={dial} unit="g" at="386" says={WORDS.dial} height={240} />
      <LiquidSurface scale={cylinder} unit="mL" at="46.3" says={WORDS.surface} height={240} />
      <Spoon shape="spoon" percent="78" says={WORDS.spoon} height={200} />
      <Spoon shape="cup" percent="120" says={WORDS.heaped} height={200} />
      <Rings errors={[-0.4, 0.1, 0.2, 0.2, 0.9]} bias={0.2} spread={0.46} says={WORDS.rings} />
    </div>
  );
}

function Verdicts() {
  return (
    <div class="gallery-stack">
      <Verdict verdict="within" word={WORDS.within} why={WORDS.keep} />
      <Verdict verdict="cannot_tell" word={WORDS.cannot} why={WORDS.other_scale} />
      <Verdict verdict="outside" word={WORDS.outside} why={WORDS.take_out} />
      <Verdict verdict="outside" isTooLittle word={WORDS.little} why={WORDS.add} />
      <Verdict verdict="held" word={WORDS.held} why={WORDS.not_proven} />
      <Verdict verdict="none" why={WORDS.type_first} />
    </div>
  );
}

function Glasses() {
  const limits = { target: "60", low: "58.5", high: "61.5" };
  return (
    <div class="gallery-row">
      <Glass says={WORDS.within} level="60.2" {...limits} uncertainty="0.1" />
      <Glass says={WORDS.type_first} level={null} {...limits} />
      <Glass says={WORDS.cannot} level="61" {...limits} uncertainty="0.8" />
      <Glass says={WORDS.outside} level="66" {...limits} uncertainty="0.1" />
      <Glass says={WORDS.plenty} level="4.6" low={null} high="4.6" uncertainty="0.1" />
      <Glass says={WORDS.plenty} level="40" target="52" />
    </div>
  );
}

function Rows() {
  return (
    <Entries name={WORDS.entries}>
      <EntryRow time="10:24" state={{ is: "here" }} act={<Cup>{WORDS.take_back}</Cup>}>
        <span class="rec">Pectin</span> 60.2 g
      </EntryRow>
      <EntryRow time="10:02" state={{ is: "log", number: 1042 }}>
        <span class="rec">Sugar</span> 10.00 kg
      </EntryRow>
      <CorrectionRow
        time="12:10"
        thing={<span class="rec">Sugar</span>}
        was="17.60"
        now="16.70 kg"
        by="Ama"
        when="12:31"
        reason={WORDS.misread}
        state={{ is: "log", number: 1051 }}
        old="17.60 kg"
        young="16.70 kg"
      />
      <EntryRow time="9:40" state={{ is: "void", by: "Teo", when: "9:55", reason: WORDS.twice }}>
        <span class="rec">Lime pickle</span>
      </EntryRow>
      <EntryRow time="8:15" state={{ is: "aside", why: WORDS.aside }}>
        <span class="rec">Lids</span>
      </EntryRow>
      <TwoCorrections
        time="11:20"
        thing={WORDS.jars_filled}
        counts={WORDS.old_counts}
        both={[
          { id: "1", value: "65", by: "Ama", when: "11:40" },
          { id: "2", value: "64", by: "Josip", when: "11:52" },
        ]}
      />
    </Entries>
  );
}

function Pictures() {
  const from = [
    {
      id: "a",
      name: "Pectin",
      sub: "Orr & Daughters",
      code: "PE-260709-K7-2",
      amount: "60 g",
      weight: "60",
      when: "9 Jul",
    },
    {
      id: "b",
      name: "Sugar",
      sub: "Tello Mill",
      code: "SU-261015-K7-4",
      amount: "10 kg",
      weight: "10000",
      when: "15 Oct",
    },
    {
      id: "c",
      name: "Mango pulp",
      sub: WORDS.made_here,
      code: "MP-261110-K7-1",
      amount: "10 kg",
      weight: "10000",
      when: "10 Nov",
    },
  ];
  const to = [
    { id: "d", name: "School kitchen", amount: "24", weight: "24", when: "11 Nov" },
    { id: "e", name: "", isUnknown: true, amount: "27", weight: "27", when: "14 Nov" },
    { id: "f", name: "Store", isStill: true, amount: "13", weight: "13", when: "now" },
  ];
  return (
    <>
      <TracePicture
        middle={{ code: "MJ-261110-K7-1", count: "64", countWord: "jars", lines: ["10 Nov"] }}
        from={from}
        to={to}
        fromSum="20.1 kg"
        onChoose={() => undefined}
      />
      <BalancePicture
        says={WORDS.balance}
        unit="kg"
        ins={[
          { id: "a", name: "Mango pulp", amount: "10.00", sort: "recorded" },
          { id: "b", name: "Sugar", amount: "10.00", sort: "recorded" },
        ]}
        outs={[
          { id: "c", name: "good jars", amount: "16.00", sort: "recorded" },
          { id: "d", name: "rejected", amount: "0.50", sort: "recorded" },
          {
            id: "e",
            name: "unaccounted",
            amount: "0.03",
            sort: "unaccounted",
            uncertainty: "0.02",
          },
          { id: "f", name: "steam", amount: "3.415", sort: "computed" },
        ]}
      />
    </>
  );
}

function Tags() {
  return (
    <div class="gallery-stack">
      <LotTag
        code="MJ-261105-K7-2"
        name="Mango jam"
        amount="48 jars"
        life="best before 5 Nov 2027"
        lifeLeft={0.97}
        onPress={() => undefined}
      />
      <LotTag
        code="MP-261110-K7-1"
        name="Mango pulp"
        amount="2.40 kg"
        life="use today"
        lifeLeft={0.05}
        state="soon"
      />
      <LotTag
        code="DM-261101-K7-2"
        name="Dried mango"
        amount="27 packs"
        life="held"
        state="held"
        isDrill
      />
    </div>
  );
}

function Forms() {
  const chosen = useSignal<string | null>("b");
  const name = useSignal("Pectin");
  const isTicked = useSignal(true);
  return (
    <>
      <TextField
        label={WORDS.name}
        value={name.value}
        onValue={(value) => {
          name.value = value;
        }}
        refusal={WORDS.refusal}
      />
      <NumberField label={WORDS.amount} typed="12.50" unit="kg" isOpen onOpen={() => undefined} />
      <TickField
        label={WORDS.laid_out}
        isTicked={isTicked.value}
        onTicked={(ticked) => {
          isTicked.value = ticked;
        }}
      />
      <CupChoice
        name={WORDS.condition}
        options={[
          { value: "a", word: "fit" },
          { value: "b", word: "refused" },
        ]}
        chosen={chosen.value}
        onChoose={(id) => {
          chosen.value = id;
        }}
      />
      <Choices
        name={WORDS.name}
        chosen={chosen.value}
        onChoose={(id) => {
          chosen.value = id;
        }}
        items={[
          { id: "a", name: "Tello Mill", sub: "3 deliveries" },
          { id: "b", name: "Orr & Daughters" },
          { id: "c", name: "MP-1", refused: WORDS.held },
        ]}
      />
    </>
  );
}

/** The page of parts. */
export function Screen() {
  const typed = useSignal("60.2");
  const bench = (
    <>
      <Keypad
        typed={typed.value}
        onTyped={(text) => {
          typed.value = text;
        }}
        column={[
          { word: "bowl", holds: "213.2", onPress: () => undefined },
          { word: "repeat", holds: "1st", onPress: () => undefined },
          { word: "unit", holds: "g", onPress: () => undefined },
        ]}
      />
      <Foot>
        <BackKey href="#/" />
        <MainKey
          words={WORDS.save(typed.value)}
          notReady={typedNumber(typed.value) === null ? WORDS.type_first : null}
        />
      </Foot>
    </>
  );
  return (
    <Frame
      where={WORDS.where}
      title={WORDS.title}
      gauge={<WaitingGauge count={5} stage="usual" href="#/outbox" />}
      bench={bench}
      benchName={WORDS.keys}
      hasKeypad
      side={
        <Part title={WORDS.entries}>
          <Rows />
        </Part>
      }
    >
      <Part title={WORDS.numbers}>
        <Numbers />
      </Part>
      <Part title={WORDS.glasses}>
        <Glasses />
      </Part>
      <Part title={WORDS.verdicts}>
        <Verdicts />
      </Part>
      <Part title={WORDS.to_be_read}>
        <ToBeRead />
      </Part>
      <Part title={WORDS.tubes}>
        <div class="gallery-stack">
          <Tube full={4} whole={6} says={WORDS.plenty} />
          <p class="gallery-row">
            <Vessel isFull />
            <Vessel isFull={false} />
          </p>
        </div>
      </Part>
      <Part title={WORDS.tags}>
        <Tags />
      </Part>
      <Part title={WORDS.waiting}>
        <WaitingGauge count={0} stage="none" since="10:24" isLarge />
        <WaitingGauge count={340} stage="days" since={WORDS.since} isLarge />
      </Part>
      <Part title={WORDS.pictures}>
        <Pictures />
      </Part>
      <Part title={WORDS.forms}>
        <Forms />
      </Part>
      <Part title={WORDS.signs}>
        <p class="gallery-row">
          {Object.keys(SIGNS)
            .filter(isSign)
            .map((sign) => (
              <SignCup key={sign} sign={sign} word={sign} />
            ))}
        </p>
      </Part>
      <Part title={WORDS.plain}>
        <div class="gallery-stack">
          <Notice>{WORDS.empty}</Notice>
          <Caution about="ph" />
          <Qr text="KL:MJ-261110-K7-1" says={WORDS.code} />
        </div>
      </Part>
    </Frame>
  );
}
