/** A lot tag: hole at the left, code, name, amount, date with its kind, a tube of life left. */
import type { ComponentChildren } from "preact";
import { PARTS } from "../text/parts.ts";
import { usePress } from "./Cup.tsx";
import { Tube } from "./Tube.tsx";

/** What a tag must shout; `fine` shouts nothing. */
export type LotTagState = "fine" | "soon" | "past" | "opened" | "held";

/** Texts are ready to show. `onPress` makes it a cup, without it stays square. */
export interface LotTagProps {
  code: string;
  name: string;
  amount?: ComponentChildren | undefined;
  /** "best before 5 Nov 2027", "use today", "held". */
  life?: string | null | undefined;
  state?: LotTagState | undefined;
  /** Share of the life still ahead, 0 to 1; null draws no tube. */
  lifeLeft?: number | null | undefined;
  isDrill?: boolean | undefined;
  onPress?: (() => void) | undefined;
  href?: string | undefined;
  isChosen?: boolean | undefined;
}

const LIFE_PARTS = 12;

/** One lot as it hangs on its jar. */
export function LotTag(props: LotTagProps) {
  const state = props.state ?? "fine";
  const press = usePress(props.onPress);
  const look = `lot-tag ${state}${props.isChosen ? " chosen" : ""}`;
  const inside = (
    <>
      <b class="lot-code">{props.code}</b>
      <span class="lot-life">
        {props.life}
        {props.isDrill && <b class="drill">{PARTS.drill}</b>}
      </span>
      <span class="rec">{props.name}</span>
      <span class="lot-amount">{props.amount}</span>
      {props.lifeLeft !== undefined && props.lifeLeft !== null && (
        <span class="lot-tube">
          <Tube
            full={state === "past" ? 0 : props.lifeLeft}
            whole={1}
            parts={LIFE_PARTS}
            says={null}
            isThin
          />
        </span>
      )}
    </>
  );
  if (props.href !== undefined) {
    return (
      <a class={`cup ${look}`} href={props.href}>
        {inside}
      </a>
    );
  }
  if (props.onPress === undefined) return <p class={look}>{inside}</p>;
  return (
    <button type="button" class={`cup ${look}`} onClick={press} aria-pressed={props.isChosen}>
      {inside}
    </button>
  );
}
