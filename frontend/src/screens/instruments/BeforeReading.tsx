/** What a check asks before anything is read: how thorough, compared with what, under which conditions. */
import { CupChoice } from "../../parts/Choices.tsx";
import { Cup, MainKey } from "../../parts/Cup.tsx";
import { NumberField } from "../../parts/Fields.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Part } from "../../parts/Plain.tsx";
import { Vessel } from "../../parts/Tube.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { CHECK } from "../../text/instruments.ts";
import { amountWords } from "../../text/numbers.ts";
import { CheckFrame } from "./CheckFrame.tsx";
import { isVolumeKnown, toleranceOf } from "./check_body.ts";
import { depthsOf, type Reference } from "./plan.ts";
import type { Checking } from "./use_check.ts";

type Props = { checking: Checking };

/** Quick or full. */
export function WhichPage({ checking }: Props) {
  const { instrument, typed, type } = checking;
  const words = CHECK.depths[instrument.sort] ?? {};
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.which}
      calm={CHECK.which_why}
      main={<MainKey words={CHECK.on_to} onPress={checking.goOn} />}
    >
      <div class="check-list">
        {depthsOf(instrument.sort).map((depth) => (
          <Cup
            key={depth}
            class="choice"
            isChosen={typed.depth === depth}
            onPress={() => type({ depth })}
          >
            {words[depth]}
          </Cup>
        ))}
      </div>
    </CheckFrame>
  );
}

const NUMBER_NAMES = ["value", "tolerance", "celsius", "altitude"] as const;
type NumberName = (typeof NUMBER_NAMES)[number];

/** The keypad of the number that is open; none while none is. */
function OpenKeys({ checking }: Props) {
  const { typed, type } = checking;
  const name = NUMBER_NAMES.find((each) => each === typed.open);
  if (name === undefined) return null;
  return (
    <Keypad
      key={name}
      typed={typed[name]}
      onTyped={(text) => type({ [name]: text })}
      isSigned={name === "altitude"}
    />
  );
}

function TypedNumber(
  props: Props & { name: NumberName; label: string; unit: string; hint?: string },
) {
  const { typed, type } = props.checking;
  const isOpen = typed.open === props.name;
  return (
    <NumberField
      label={props.label}
      hint={props.hint}
      typed={typed[props.name]}
      unit={props.unit}
      isOpen={isOpen}
      onOpen={() => type({ open: isOpen ? "" : props.name })}
    />
  );
}

/** Check weights, buffers or values; those of earlier checks are offered again. */
export function KnownPage({ checking }: Props) {
  const { instrument, typed, type } = checking;
  const isOpen = typed.open !== "";
  const isTicked = (each: Reference) => typed.known.some(({ value }) => value === each.value);
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.known[instrument.sort] ?? CHECK.known_else}
      calm={CHECK.known_why[instrument.sort]}
      keypad={isOpen && <OpenKeys checking={checking} />}
      main={
        typedNumber(typed.value) !== null ? (
          <MainKey
            words={CHECK.keep(amountWords(typedNumber(typed.value), instrument.unit))}
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
                  ? typed.known.filter(({ value }) => value !== each.value)
                  : [...typed.known, each],
              })
            }
          >
            <Vessel isFull={isTicked(each)} />
            <span class="choice-name">
              <span>{amountWords(each.value, instrument.unit)}</span>
              <span class="second">{trueWords(each, instrument.unit)}</span>
            </span>
          </Cup>
        ))}
      </div>
      <AddKnown checking={checking} />
    </CheckFrame>
  );
}

function trueWords(each: Reference, unit: string): string {
  const tolerance = toleranceOf(each, unit);
  const words = tolerance === null ? CHECK.not_true : CHECK.true_to(amountWords(tolerance, unit));
  return [each.accuracy_class, words].filter(Boolean).join(", ");
}

const CLASSES = ["F1", "F2", "M1", "M2", "M3", ""];

function AddKnown({ checking }: Props) {
  const { instrument, typed, type } = checking;
  const isMass = instrument.sort === "scale";
  return (
    <Part title={CHECK.add_known}>
      <TypedNumber checking={checking} name="value" label={CHECK.value} unit={instrument.unit} />
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
function addKnown({ typed, type }: Checking): void {
  const value = typedNumber(typed.value);
  if (value === null) return;
  const { accuracy_class, tolerance, known } = typed;
  const others = known.filter((each) => each.value !== value);
  type({ known: [...others, { value, accuracy_class, tolerance }], value: "", open: "value" });
}

/** Water for a vessel: how warm, and on which scale it is weighed. */
export function WaterPage({ checking }: Props) {
  const { typed, type, scales, scale, fields } = checking;
  const why = !isVolumeKnown(fields)
    ? CHECK.no_volume
    : !scale?.division
      ? CHECK.no_scale
      : typedNumber(typed.celsius) === null
        ? CHECK.water_first
        : null;
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.water}
      calm={CHECK.water_why}
      keypad={typed.open !== "" && <OpenKeys checking={checking} />}
      main={
        <MainKey
          words={CHECK.on_to}
          notReady={why}
          onNotReady={() => type({ open: "celsius" })}
          onPress={checking.goOn}
        />
      }
    >
      <TypedNumber checking={checking} name="celsius" label={CHECK.celsius} unit="degC" />
      <Part title={CHECK.on_scale}>
        <CupChoice
          name={CHECK.on_scale}
          options={scales.map((each) => ({ value: each.id, word: each.name }))}
          chosen={scale?.id ?? null}
          onChoose={(id) => type({ scale: id })}
        />
      </Part>
    </CheckFrame>
  );
}

/** Where water boils depends on the height; asked only where the place does not say it. */
export function AltitudePage({ checking }: Props) {
  const { typed, type } = checking;
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.altitude}
      calm={CHECK.altitude_why}
      keypad={typed.open !== "" && <OpenKeys checking={checking} />}
      main={
        <MainKey
          words={CHECK.on_to}
          notReady={typedNumber(typed.altitude) === null ? CHECK.altitude_first : null}
          onNotReady={() => type({ open: "altitude" })}
          onPress={checking.goOn}
        />
      }
    >
      <TypedNumber checking={checking} name="altitude" label={CHECK.altitude_m} unit="m" />
    </CheckFrame>
  );
}
