/** The instrument in use as a cup that asks for another. */
import { Cup } from "../../parts/Cup.tsx";
import { FitMark } from "../../parts/FitMark.tsx";
import { Icon } from "../../parts/Icon.tsx";
import type { SignName } from "../../parts/signs.ts";
import { FITNESS } from "../../text/fitness.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import type { InstrumentShown } from "../common/batches.ts";
import { standingOf } from "../common/instruments.ts";

const SIGN_OF: Record<string, SignName> = {
  scale: "pan",
  thermometer: "stem",
  ph_meter: "stem",
  refractometer: "lens",
  salometer: "stem",
  cylinder: "column",
  cup: "cup",
  spoon: "spoon",
};

/** The cup of the instrument in use, with its step. */
export function InstrumentCup({
  instrument,
  onPress,
}: {
  instrument: InstrumentShown | null;
  onPress: () => void;
}) {
  const is = instrument === null ? null : standingOf(instrument.id).is;
  return (
    <Cup class="tool" onPress={onPress}>
      <Icon name={SIGN_OF[instrument?.sort ?? "scale"] ?? "pan"} />
      <span>
        <b>{instrument?.name ?? WEIGH_IN.no_instrument}</b>
        <span>
          {instrument === null
            ? WEIGH_IN.no_instrument_sub
            : instrument.division === null
              ? WEIGH_IN.no_division
              : WEIGH_IN.steps(instrument.division, instrument.unit)}
          {is !== null && (
            <>
              , <FitMark is={is} />{" "}
              <span class={is === "failed" ? "shout" : ""}>{FITNESS[is]}</span>
            </>
          )}
        </span>
      </span>
    </Cup>
  );
}
