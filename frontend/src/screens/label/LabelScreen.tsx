/** Label: the right words on the jar, at true size, with a code drawn on this phone. */

import { useSignal } from "@preact/signals";
import type { LotState } from "../../calc/stock.ts";
import { Caution } from "../../parts/Caution.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { NumberField, TickField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Part } from "../../parts/Plain.tsx";
import { Qr } from "../../parts/Qr.tsx";
import { sheet } from "../../state/sheets.ts";
import { LABEL } from "../../text/label.ts";
import { figure } from "../../text/numbers.ts";
import { houseAddress } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { LotHeld } from "../common/HeldPlate.tsx";
import { BatchInQuestion } from "../common/InQuestion.tsx";
import { Instead } from "../common/Instead.tsx";
import { codeText, type LabelLines, labelOf } from "./label.ts";
import "./label.css";

const COPIES_MAX = 200; // one sheet run; more is printed in two
const DIGITS_MAX = 3;

/** `#/label/:lot`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const lines = labelOf(params.lot ?? "");
  if (lines === null) {
    return (
      <Instead
        where={LABEL.where}
        title={params.lot ?? LABEL.where}
        benchName={LABEL.bench}
        back="#/"
        on={{ words: LABEL.stock, href: "#/stock" }}
        says={LABEL.not_here}
      />
    );
  }
  return <Printing lines={lines} />;
}

function Printing({ lines }: { lines: LabelLines }) {
  const copies = useSignal("1");
  const isChecked = useSignal(false);
  const lot = sheet<LotState>(`lot:${lines.lot}`).value;
  const count = Math.min(Math.max(Number(copies.value) || 0, 0), COPIES_MAX);
  return (
    <>
      <Frame
        where={LABEL.where}
        title={lines.name}
        isRecorded
        aside={<b class="code">{lines.lot}</b>}
        gauge={<HeadGauge />}
        hasKeypad
        benchName={LABEL.bench}
        bench={
          <>
            <Keypad
              typed={copies.value}
              onTyped={(text) => {
                copies.value = text;
              }}
              mostChars={DIGITS_MAX}
              isWhole
            />
            <Foot>
              <BackKey href={`#/lot/${lines.lot}`} />
              <MainKey
                words={LABEL.print(LABEL.copy(count))}
                notReady={isChecked.value ? (count === 0 ? LABEL.copies : null) : LABEL.eye_first}
                onNotReady={() => focusFirst("eye")}
                onPress={() => window.print()}
              />
            </Foot>
          </>
        }
      >
        <OneLabel lines={lines} />
        <Part title={LABEL.checks}>
          {lot !== null && <LotHeld lot={lot.state} />}
          <BatchInQuestion batch={lines.batch} />
          {lines.ingredients !== null && <p class="second">{LABEL.by_weight}</p>}
          <div id="field-eye">
            <TickField
              label={LABEL.eye}
              hint={lines.allergens === null ? LABEL.none_listed : LABEL.eye_why}
              isTicked={isChecked.value}
              onTicked={(isTicked) => {
                isChecked.value = isTicked;
              }}
            />
          </div>
          <NumberField
            label={LABEL.copies}
            typed={figure(copies.value || null)}
            isOpen
            onOpen={() => undefined}
          />
          <LabelCautions />
        </Part>
      </Frame>
      <div class="printed" aria-hidden="true">
        {Array.from({ length: count }, (_, copy) => (
          <OneLabel key={`${lines.lot}-${copy + 1}`} lines={lines} />
        ))}
        <LabelCautions />
      </div>
    </>
  );
}

/** On the screen, and once on the printed sheet, below the labels. */
function LabelCautions() {
  return <Caution about={["label", "net_content", "shelf_life"]} />;
}

function OneLabel({ lines }: { lines: LabelLines }) {
  return (
    <div class="label">
      <div class="label-words">
        <p class="label-name rec">{lines.name}</p>
        {lines.net !== null && (
          <p>
            {LABEL.net} <b>{lines.net}</b>
          </p>
        )}
        {lines.ingredients !== null && (
          <p>
            {LABEL.ingredients}: {lines.ingredients}
          </p>
        )}
        {lines.allergens !== null && <p class="label-shout">{LABEL.contains(lines.allergens)}</p>}
        <p>
          <b>{lines.life ?? LABEL.no_life}</b>
        </p>
        {lines.made !== null && <p>{lines.made}</p>}
        <p>
          {LABEL.lot} <b>{lines.lot}</b>
        </p>
      </div>
      <Qr
        class="label-code"
        text={codeText(lines.lot, houseAddress())}
        says={LABEL.code_says(lines.lot)}
      />
    </div>
  );
}
