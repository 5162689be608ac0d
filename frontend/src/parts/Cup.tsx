/** Cups: all that can be pressed. Flat at the rim, round below. */
import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { PARTS } from "../text/parts.ts";
import { Icon } from "./Icon.tsx";
import type { SignName } from "./signs.ts";

const ONE_TOUCH_MS = 50; // a wet finger touches twice; two touches within this are one

type Press = (() => void) | undefined;

/** A click handler that takes two touches within 50 ms for one. */
export function usePress(onPress: Press): (event: MouseEvent) => void {
  const pressedAt = useRef(Number.NEGATIVE_INFINITY);
  return (event) => {
    if (event.timeStamp - pressedAt.current < ONE_TOUCH_MS) return;
    pressedAt.current = event.timeStamp;
    onPress?.();
  };
}

/** What a cup needs: words as children, and either a way (`href`) or an act (`onPress`). */
export interface CupProps {
  children: ComponentChildren;
  onPress?: (() => void) | undefined;
  href?: string | undefined;
  /** Said instead of the words inside, for one who hears the screen. */
  name?: string | undefined;
  /** For a cup that is one of several: whether it is the chosen one. */
  isChosen?: boolean | undefined;
  /** For a cup that opens something below it. */
  isOpen?: boolean | undefined;
  class?: string | undefined;
}

/** A pressable thing of at least 48 x 48. */
export function Cup({ children, onPress, href, name, isChosen, isOpen, ...rest }: CupProps) {
  const press = usePress(onPress);
  const look = ["cup", isChosen ? "chosen" : "", rest.class ?? ""].filter(Boolean).join(" ");
  if (href !== undefined) {
    return (
      <a class={look} href={href} aria-label={name} aria-current={isChosen ? "true" : undefined}>
        {children}
      </a>
    );
  }
  return (
    <button
      type="button"
      class={look}
      onClick={press}
      aria-label={name}
      aria-pressed={isChosen}
      aria-expanded={isOpen}
    >
      {children}
    </button>
  );
}

/** A cup with a sign over its word, as on the shelf of today. */
export function SignCup({
  sign,
  word,
  ...press
}: { sign: SignName; word: string } & Omit<CupProps, "children" | "name">) {
  return (
    <Cup {...press} class="sign-cup">
      <Icon name={sign} size={36} />
      {word}
    </Cup>
  );
}

/** What the main key needs. `notReady` is why it cannot act yet, in words. */
export interface MainKeyProps {
  words: ComponentChildren;
  onPress?: (() => void) | undefined;
  href?: string | undefined;
  notReady?: string | null | undefined;
  /** Takes the person to the first open thing; the key stays focusable. */
  onNotReady?: (() => void) | undefined;
}

/** The one main act of a screen, with words that say what will happen. */
export function MainKey({ words, onPress, href, notReady, onNotReady }: MainKeyProps) {
  const isReady = notReady === undefined || notReady === null;
  const press = usePress(isReady ? onPress : onNotReady);
  if (isReady && href !== undefined) {
    return (
      <a class="cup main" href={href}>
        {words}
      </a>
    );
  }
  return (
    <button
      type="button"
      class={isReady ? "cup main" : "cup main not-ready"}
      aria-disabled={!isReady}
      onClick={press}
    >
      {isReady ? words : notReady}
    </button>
  );
}

/** Back, always one step up. */
export function BackKey({
  href,
  onPress,
  name,
}: {
  href?: string | undefined;
  onPress?: (() => void) | undefined;
  name?: string | undefined;
}) {
  return (
    <Cup
      href={href}
      onPress={onPress}
      class="back"
      name={name === undefined ? undefined : `${PARTS.back}: ${name}`}
    >
      <Icon name="back" size={24} />
      <span>{PARTS.back}</span>
    </Cup>
  );
}
