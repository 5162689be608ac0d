/** What an instrument is compared with: check weights, buffers, values; new ones are added here. */
import { CupChoice } from "../../parts/Choices.tsx";
import { Cup, MainKey } from "../../parts/Cup.tsx";
import { Part } from "../../parts/Plain.tsx";
import { Vessel } from "../../parts/Tube.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { CHECK } from "../../text/checks.ts";
import { amountWords } from "../../text/numbers.ts";
import { badKnown } from "./bad_numbers.ts";
import { CheckFrame } from "./CheckFrame.tsx";
import { isSame, type Reference } from "./plan.ts";
import { OpenKeys, TypedNumber } from "./TypedNumber.tsx";
import { trueWords } from "./true_words.ts";
import type { Checking } from "./use_check.ts";

type Props = { checking: Checking };

/** Check weights, buffers or values; those of earlier checks are offered again. */
export function KnownPage({ checking }: Props) {
  const { instrument, typed, type } = checking;
  const isOpen = typed.open !== "";
  const bad = badKnown(typed.value, checking);
  const isTicked = (each: Reference) => typed.known.some((known) => isSame(known, each));
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.known[instrument.sort] ?? CHECK.known_else}
      calm={CHECK.known_why[instrument.sort]}
      keypad={isOpen && <OpenKeys checking={checking} onEnter={() => addKnown(checking)} />}
      main={
        typedNumber(typed.value) !== null ? (
          <MainKey
            words={CHECK.keep(amountWords(typedNumber(typed.value), instrument.unit))}
            notReady={bad === null ? null : CHECK.other_number}
            onNotReady={() => type({ open: "value" })}
            onPress={() => addKnown(checking)}
          />
        ) : (
          <MainKey
            words={CHECK.on_to}
            notReady={typed.known.length === 0 ? CHECK.choose_known : null}
            onNotReady={() => type({ open: "value" })}
            onPress={checking.goOn}
          />
        )
      }
    >
      <div class="check-list">
        {checking.remembered.map((each) => (
          <Cup
            key={each.value}
            class="choice area"
            isChosen={isTicked(each)}
            onPress={() =>
              type({
                known: isTicked(each)
                  ? typed.known.filter((known) => !isSame(known, each))
                  : [...typed.known, each],
              })
            }
          >
            <Vessel isFull={isTicked(each)} />
            <span class="choice-name">
              <span>{amountWords(each.value, instrument.unit)}</span>
              <span class="second">{trueWords(each, instrument)}</span>
            </span>
          </Cup>
        ))}
      </div>
      <AddKnown checking={checking} />
    </CheckFrame>
  );
}

const CLASSES = ["F1", "F2", "M1", "M2", "M3", ""];

function AddKnown({ checking }: Props) {
  const { instrument, typed, type } = checking;
  const isMass = instrument.sort === "scale";
  return (
    <Part title={CHECK.add_known}>
      <TypedNumber
        checking={checking}
        name="value"
        label={CHECK.value}
        unit={instrument.unit}
        refusal={badKnown(typed.value, checking)}
      />
      {isMass && (
        <CupChoice
          name={CHECK.class_of}
          options={CLASSES.map((value) => ({ value, word: value || CHECK.no_class }))}
          chosen={typed.accuracy_class}
          onChoose={(accuracy_class) => type({ accuracy_class })}
        />
      )}
      {(!isMass || typed.accuracy_class === "") && (
        <TypedNumber
          checking={checking}
          name="tolerance"
          label={CHECK.tolerance}
          unit={instrument.unit}
        />
      )}
    </Part>
  );
}

/** What was typed joins the known ones, ticked. */
function addKnown(checking: Checking): void {
  const { typed, type } = checking;
  const value = typedNumber(typed.value);
  if (value === null || badKnown(typed.value, checking) !== null) return;
  const { accuracy_class, tolerance, known } = typed;
  const added = { value, accuracy_class, tolerance };
  const others = known.filter((each) => !isSame(each, added));
  type({ known: [...others, added], value: "", open: "value" });
}
