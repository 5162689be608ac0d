/** A number with the rule under it that says how good it is. */
import { useSignal } from "@preact/signals";
import { amountWords, figure, unitWord } from "../text/numbers.ts";
import { PARTS } from "../text/parts.ts";
import { whiskerShare } from "./drawing.ts";

/** How a number was come by; it decides the rule under it. `plain` says nothing of it. */
export type Basis = "counted" | "measured" | "computed" | "booked" | "plain";

/** What opens under a number: where it comes from. Every text is ready to show. */
export interface BudgetLines {
  value: string;
  uncertainty?: string | null | undefined;
  coverage?: string | null | undefined;
  instrument?: string | null | undefined;
  checked?: string | null | undefined;
  inputs?: readonly { name: string; value: string }[] | undefined;
  formula?: string | null | undefined;
  source?: string | null | undefined;
}

/** `amount` null means not recorded: a dash, no rule, never 0. */
export interface NumberShownProps {
  amount: string | null;
  unit?: string | null | undefined;
  basis: Basis;
  /** The guard band in the same unit: the length of the whisker. */
  uncertainty?: string | null | undefined;
  /** Given: a tap opens it. */
  budget?: BudgetLines | undefined;
  size?: "net" | "reading" | undefined;
}

/** The number for those who hear the screen. */
export function saidOf({ amount, unit, basis, uncertainty }: NumberShownProps): string {
  if (amount === null) return PARTS.not_recorded;
  const words = [amountWords(amount, unit)];
  if (basis !== "plain") words.push(PARTS[basis]);
  if (uncertainty) words.push(PARTS.give_or_take(amountWords(uncertainty, unit)));
  return words.join(", ");
}

function Figure(props: NumberShownProps) {
  const { amount, unit, basis, uncertainty } = props;
  const word = amount === null ? "" : unitWord(unit);
  const share = amount === null ? 0 : whiskerShare(amount, uncertainty);
  return (
    <>
      <span class={amount === null ? "ruled" : `ruled ${basis}`} aria-hidden="true">
        {figure(amount)}
        {basis === "measured" && amount !== null && (
          <i class="whisker" style={{ width: `${share * 100}%` }} />
        )}
      </span>
      {word !== "" && (
        <small class="unit" aria-hidden="true">
          {word}
        </small>
      )}
      <span class="unseen">{saidOf(props)}</span>
    </>
  );
}

const LONG_CHARS = 6; // what a phone of 360 px has room for beside a glass
const LONGER_CHARS = 8;
const LONGEST_CHARS = 10;

/** Long figures step down in size; a figure never breaks. */
function stepDown(amount: string | null): string {
  const { length } = figure(amount);
  if (length >= LONGEST_CHARS) return " longest";
  if (length >= LONGER_CHARS) return " longer";
  return length >= LONG_CHARS ? " long" : "";
}

/** A figure, its unit at 0.62 of the figure, its rule; a tap opens its budget if it has one. */
export function NumberShown(props: NumberShownProps) {
  const isOpen = useSignal(false);
  const look = props.size ? `number ${props.size}${stepDown(props.amount)}` : "number";
  if (props.budget === undefined) {
    return (
      <span class={look}>
        <Figure {...props} />
      </span>
    );
  }
  return (
    <>
      <button
        type="button"
        class={`${look} opens`}
        aria-expanded={isOpen.value}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        <Figure {...props} />
      </button>
      {isOpen.value && <Budget lines={props.budget} />}
    </>
  );
}

/** Value, U, k, instrument, date of its check, inputs, formula, source: each where there is one. */
export function Budget({ lines }: { lines: BudgetLines }) {
  const words = PARTS.budget;
  const rows: [string, string | null | undefined][] = [
    [words.value, lines.value],
    [words.uncertainty, lines.uncertainty],
    [words.coverage, lines.coverage],
    [words.instrument, lines.instrument],
    [words.checked, lines.checked],
    ...(lines.inputs ?? []).map((each): [string, string] => [each.name, each.value]),
    [words.formula, lines.formula],
    [words.source, lines.source],
  ];
  return (
    <dl class="facts budget">
      {rows.map(([name, value]) =>
        value ? (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ) : null,
      )}
    </dl>
  );
}
