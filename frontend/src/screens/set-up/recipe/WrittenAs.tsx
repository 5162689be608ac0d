/** How a line is written: an amount, or a share of the base or of the whole; and what the base is. */
import { Cup } from "../../../parts/Cup.tsx";
import { amountWords } from "../../../text/numbers.ts";
import { SHARE } from "../../../text/recipe_lines.ts";
import { LINE } from "../../../text/set_up_recipe.ts";
import { ChoiceOf, NumberOf } from "../FormFields.tsx";
import type { Bound } from "../form.ts";
import type { LineTyped } from "./items.ts";
import { type AmountOfLine, isShare } from "./shares.ts";

const OPTIONS = ["base", "whole"] as const;

/** `found` is what follows for this line. */
export function WrittenAs(props: { form: Bound; line: LineTyped; found: AmountOfLine | null }) {
  const { form, line, found } = props;
  return (
    <>
      <ChoiceOf
        form={form}
        name="percent_of"
        label={SHARE.as}
        choices={OPTIONS}
        none={SHARE.amount}
        words={(of) => (of === "base" ? SHARE.base : SHARE.whole)}
        onChosen={(of) => {
          form.type({ percent_of: of });
          form.open.value = of === "" ? "amount" : "percent";
        }}
      />
      {isShare(line) ? (
        <>
          <NumberOf
            form={form}
            name="percent"
            label={SHARE.percent[line.percent_of] ?? SHARE.as}
            hint={SHARE.hint[line.percent_of] ?? ""}
            unit="%"
          />
          {found?.is === "ready" && (
            <p class="second">{SHARE.makes(amountWords(found.amount, found.unit))}</p>
          )}
        </>
      ) : (
        <NumberOf form={form} name="amount" label={LINE.amount} unit={line.amount_unit} />
      )}
      <p class="key-row">
        <Cup
          isChosen={line.is_base !== ""}
          onPress={() => form.type({ is_base: line.is_base === "" ? "yes" : "" })}
        >
          {SHARE.is_base}
        </Cup>
      </p>
    </>
  );
}
