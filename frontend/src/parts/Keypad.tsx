/** The own keypad: digits from the top, 0 double wide; hardware keys work too. */
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { PARTS } from "../text/parts.ts";
import { Cup } from "./Cup.tsx";
import { Icon } from "./Icon.tsx";
import { afterKey } from "./typing.ts";

/** A cup of the right column (tare, repeat, unit), with what it holds now. */
export interface SideKey {
  word: string;
  holds: ComponentChildren;
  onPress: () => void;
  isOn?: boolean | undefined;
  name?: string | undefined;
}

/** What is typed is owned by the caller; every key answers with the whole new text. */
export interface KeypadProps {
  typed: string;
  onTyped: (typed: string) => void;
  /** Up to three cups under Rub out. */
  column?: readonly SideKey[] | undefined;
  mostChars?: number | undefined;
  /** Whole numbers only: no point. */
  isWhole?: boolean | undefined;
  /** The number may lie below zero. */
  isSigned?: boolean | undefined;
  /** Enter on a hardware keyboard. */
  onEnter?: (() => void) | undefined;
  /** Keys are taken from the hardware keyboard (default yes). */
  hearsKeys?: boolean | undefined;
}

const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9"];
const MOST_CHARS = 9;

function typesElsewhere(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.matches("input, textarea, select");
}

function useHardwareKeys(press: (key: string) => void, props: KeypadProps): void {
  useEffect(() => {
    if (props.hearsKeys === false) return;
    const hear = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || typesElsewhere(event.target)) return;
      if (event.key === "Enter" && event.target === document.body) props.onEnter?.();
      if (/^[\d.,-]$/.test(event.key) || event.key === "Backspace") {
        event.preventDefault();
        press(event.key);
      }
    };
    window.addEventListener("keydown", hear);
    return () => window.removeEventListener("keydown", hear);
  });
}

function looks(
  count: number,
  { isWhole, isSigned }: { isWhole: boolean; isSigned: boolean },
): string {
  if (count > 0 || isSigned) return `keypad holds-${count}`;
  return isWhole ? "keypad bare whole" : "keypad bare";
}

/** Twelve keys and a column of up to three cups. */
export function Keypad(props: KeypadProps) {
  const { typed, onTyped, column = [], mostChars = MOST_CHARS } = props;
  const rules = { mostChars, isWhole: props.isWhole ?? false, isSigned: props.isSigned ?? false };
  // Two quick keys may come before the screen is drawn again: each goes on from the last one.
  const latest = useRef(typed);
  latest.current = typed;
  const press = (key: string) => {
    latest.current = afterKey(latest.current, key, rules);
    onTyped(latest.current);
  };
  useHardwareKeys(press, props);
  return (
    <fieldset class={looks(column.length, rules)}>
      <legend class="unseen">{PARTS.keypad}</legend>
      {DIGITS.map((digit) => (
        <Cup key={digit} class={`digit at-${digit}`} onPress={() => press(digit)}>
          {digit}
        </Cup>
      ))}
      <Cup
        class={props.isWhole && column.length > 0 ? "digit at-0 wide" : "digit at-0"}
        onPress={() => press("0")}
      >
        0
      </Cup>
      {props.isSigned && (
        <Cup class="digit at-minus" name={PARTS.minus} onPress={() => press("-")}>
          {"\u2212"}
        </Cup>
      )}
      {!props.isWhole && (
        <Cup class="digit at-point" name={PARTS.point} onPress={() => press(".")}>
          .
        </Cup>
      )}
      <Cup class="word-key rub" onPress={() => press("Backspace")}>
        <Icon name="rubber" size={26} />
        {PARTS.rub_out}
      </Cup>
      {column.map((key) => (
        <Cup
          key={key.word}
          class={key.isOn ? "word-key on" : "word-key"}
          onPress={key.onPress}
          name={key.name}
        >
          <span>{key.word}</span>
          <b>{key.holds}</b>
        </Cup>
      ))}
    </fieldset>
  );
}
