/** What a check asks before anything is read: how thorough, and under which conditions. */

import { type Decimal, plain, rounded } from "../../calc/numbers.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { Cup, MainKey } from "../../parts/Cup.tsx";
import { Part } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { CHECK } from "../../text/checks.ts";
import { amountWords } from "../../text/numbers.ts";
import { badWater } from "./bad_numbers.ts";
import { CheckFrame } from "./CheckFrame.tsx";
import { boilingAt, isVolumeKnown } from "./check_body.ts";
import { depthsOf } from "./plan.ts";
import { OpenKeys, TypedNumber } from "./TypedNumber.tsx";
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

/** Water for a vessel: how warm, and on which scale it is weighed. */
export function WaterPage({ checking }: Props) {
  const { typed, type, scales, scale, fields } = checking;
  const bad = badWater(typed.celsius);
  const why = !isVolumeKnown(fields)
    ? CHECK.no_volume
    : !scale?.division
      ? CHECK.no_scale
      : typedNumber(typed.celsius) === null
        ? CHECK.water_first
        : bad === null
          ? null
          : CHECK.other_number;
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
      <TypedNumber
        checking={checking}
        name="celsius"
        label={CHECK.celsius}
        unit="degC"
        refusal={bad}
      />
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
  const altitude = typedNumber(typed.altitude);
  const boils = altitude === null ? null : boilingAt(altitude);
  const isBad = altitude !== null && boils === null;
  return (
    <CheckFrame
      checking={checking}
      title={CHECK.altitude}
      calm={CHECK.altitude_why}
      keypad={typed.open !== "" && <OpenKeys checking={checking} />}
      main={
        <MainKey
          words={CHECK.on_to}
          notReady={altitude === null ? CHECK.altitude_first : isBad ? CHECK.other_number : null}
          onNotReady={() => type({ open: "altitude" })}
          onPress={checking.goOn}
        />
      }
    >
      <TypedNumber
        checking={checking}
        name="altitude"
        label={CHECK.altitude_m}
        unit="m"
        hint={boils === null ? undefined : CHECK.boils_at(amountWords(shortly(boils), "degC"))}
        refusal={isBad ? CHECK.altitude_range : null}
      />
    </CheckFrame>
  );
}

function shortly(celsius: Decimal): string {
  return plain(rounded(celsius, 1));
}
