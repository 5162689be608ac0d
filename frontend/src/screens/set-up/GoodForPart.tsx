/** What an instrument is good for: one sentence, and its whisker inside the tolerance it can judge. */
import { glassPlan } from "../../parts/glass_plan.ts";
import { LyingGlass } from "../../parts/LyingGlass.tsx";
import { Part } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { amountWords } from "../../text/numbers.ts";
import { GOOD_FOR } from "../../text/set_up.ts";
import { type Bound, textAt } from "./form.ts";
import { isBowlWeighed } from "./instrument_units.ts";
import { type GoodFor, goodFor, toleranceDrawn } from "./instrument_use.ts";

/** Says what is missing while the smallest step is not typed. */
export function GoodForPart({ form }: { form: Bound }) {
  const division = typedNumber(textAt(form.typed, "division"));
  const unit = textAt(form.typed, "unit");
  const isWeighed = isBowlWeighed(textAt(form.typed, "sort"));
  const found =
    division === null
      ? null
      : goodFor({
          division,
          repeatability: typedNumber(textAt(form.typed, "repeatability")),
          readings: isWeighed ? 2 : 1,
        });
  if (found === null) return <p class="second">{GOOD_FOR.unknown}</p>;
  const reach = amountWords(found.reach, unit);
  return (
    <Part title={GOOD_FOR.title}>
      <p>
        {isWeighed ? GOOD_FOR.net(reach) : GOOD_FOR.reading(reach)}{" "}
        {found.tolerance !== null && GOOD_FOR.tolerance(amountWords(found.tolerance, unit))}
      </p>
      {found.tolerance !== null && <Drawn found={found} tolerance={found.tolerance} unit={unit} />}
      <p class="second">{GOOD_FOR.coverage}</p>
    </Part>
  );
}

function Drawn(props: { found: GoodFor; tolerance: string; unit: string }) {
  const { found, tolerance, unit } = props;
  const says = GOOD_FOR.drawn(amountWords(found.reach, unit), amountWords(tolerance, unit));
  const { window, ...amounts } = toleranceDrawn(tolerance);
  const plan = glassPlan({ says, ...amounts, uncertainty: found.reach });
  return <LyingGlass plan={{ ...plan, window }} says={says} />;
}
