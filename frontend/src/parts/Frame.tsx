/** The frame of every screen: head and sheet for eyes, bench for thumbs. */
import type { ComponentChildren } from "preact";
import { useLayoutEffect } from "preact/hooks";
import { WithCodes } from "./WithCodes.tsx";

/** What stands where. On screens from 900 px `side` stands beside the work, else below it. */
export interface FrameProps {
  /** Line 1: where I am and whose hands. */
  where: ComponentChildren;
  /** Line 2: the thing or the day. */
  title: ComponentChildren;
  /** The title is a name a person gave: it is set in the serif. */
  isRecorded?: boolean | undefined;
  /** Right of the title: a place in a row, a count, a small cup. */
  aside?: ComponentChildren | undefined;
  /** One calm line under the title. */
  calm?: ComponentChildren | undefined;
  /** The waiting gauge. */
  gauge?: ComponentChildren | undefined;
  side?: ComponentChildren | undefined;
  /** What decides, such as a verdict: whole above the bench, however long the sheet is. */
  plate?: ComponentChildren | undefined;
  bench: ComponentChildren;
  /** What the bench is for, said to one who hears the screen. */
  benchName: string;
  /** The bench holds a keypad; a form with nothing beside it takes both columns of a wide screen. */
  hasKeypad?: boolean | undefined;
  isStall?: boolean | undefined;
  children: ComponentChildren;
}

/** One screen. `children` is the work on the sheet. */
export function Frame(props: FrameProps) {
  // A new screen is read from its top, wherever the last one was scrolled to.
  useLayoutEffect(() => window.scrollTo(0, 0), []);
  const looks = [
    "frame",
    props.side ? "sided" : "",
    props.hasKeypad ? "keys" : "",
    props.isStall ? "stall" : "",
  ];
  return (
    <div class={looks.filter(Boolean).join(" ")}>
      <header class="head">
        <p class={props.gauge ? "where" : "where alone"}>
          <WithCodes words={props.where} />
        </p>
        {props.gauge}
        <h1 class={[props.isRecorded ? "rec" : "", props.aside ? "" : "alone"].join(" ").trim()}>
          <WithCodes words={props.title} />
        </h1>
        {props.aside && <div class="aside">{props.aside}</div>}
        {props.calm && <p class="calm">{props.calm}</p>}
      </header>
      <main>{props.children}</main>
      {props.side && <aside class="side">{props.side}</aside>}
      <div class="low">
        {props.plate && <div class="plate">{props.plate}</div>}
        <section class="bench" aria-label={props.benchName}>
          {props.bench}
        </section>
      </div>
    </div>
  );
}

/** The last row of the bench: back at the left, the main key beside it. */
export function Foot({ children }: { children: ComponentChildren }) {
  const count = Array.isArray(children) ? children.filter(Boolean).length : 1;
  const look = count === 1 ? "foot alone" : count === 3 ? "foot pair" : "foot";
  return <div class={look}>{children}</div>;
}
