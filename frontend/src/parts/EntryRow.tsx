/** Rows of the record: an entry, a correction, a void, two corrections that disagree. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { figure } from "../text/numbers.ts";
import { PARTS } from "../text/parts.ts";
import { Cup } from "./Cup.tsx";

/** Where an entry is: on this phone, gone into the log under its number, or kept aside. */
export type EntryState =
  | { is: "here" }
  /** `number` null: in the log, its number not known on this phone. */
  | { is: "log"; number: number | null }
  | { is: "aside"; why: string }
  | { is: "void"; by: string; when: string; reason: string };

const MARKS = {
  // Above the line: not handed over yet. Gone in: in the log. Beside the vessel: kept aside.
  here: [
    "M9 1.5C6.9 4.2 5.9 5.7 5.9 7.1a3.1 3.1 0 0 0 6.2 0C12.1 5.7 11.1 4.2 9 1.5zM1 14q2 2.6 8 2.6t8-2.6",
    "",
  ],
  log: ["", "M1 4q2.4 2.6 8 2.6T17 4v9a3 3 0 0 1-3 3H4a3 3 0 0 1-3-3z"],
  aside: [
    "M1 3v9.5a3 3 0 0 0 3 3h4a3 3 0 0 0 3-3V3",
    "M14.8 7c-1.3 1.8-2 2.7-2 3.5a2 2 0 0 0 4 0c0-.8-.7-1.7-2-3.5z",
  ],
  void: ["", ""],
} satisfies Record<EntryState["is"], [string, string]>;

function Mark({ is }: { is: EntryState["is"] }) {
  const [line, full] = MARKS[is];
  return (
    <svg class="mark" width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
      <path class="icon-line" d={line} />
      <path class="icon-full" d={full} />
    </svg>
  );
}

function stateWords(state: EntryState): string {
  if (state.is === "here") return PARTS.on_this_phone;
  if (state.is === "log") {
    return state.number === null
      ? PARTS.in_the_log
      : PARTS.log_number(figure(String(state.number)));
  }
  return state.is === "aside" ? PARTS.kept_aside : PARTS.void_entry;
}

/** One entry; `act` is a cup such as Take back, `children` the thing and its figure. */
export interface EntryRowProps {
  time: string;
  state: EntryState;
  children: ComponentChildren;
  act?: ComponentChildren | undefined;
  more?: ComponentChildren | undefined;
}

/** Time, thing, figure, and where the entry is. A void stays readable in its place. */
export function EntryRow({ time, state, children, act, more }: EntryRowProps) {
  return (
    <li class={`entry ${state.is}`}>
      <span class="entry-time">{time}</span>
      <span class={state.is === "void" ? "entry-thing struck" : "entry-thing"}>{children}</span>
      <span class="entry-state">
        <Mark is={state.is} /> {stateWords(state)}
      </span>
      {state.is === "aside" && <span class="entry-more">{state.why}</span>}
      {state.is === "void" && (
        <span class="entry-more">
          <span class="rec">{state.by}</span>, {state.when}: “
          <span class="rec">{state.reason}</span>”
        </span>
      )}
      {more && <span class="entry-more">{more}</span>}
      {act && <span class="entry-act">{act}</span>}
    </li>
  );
}

/** A row that opens: its name, its figure in one piece, and in small what else one sees at once. */
export interface OpenRowProps {
  thing: ComponentChildren;
  figure: ComponentChildren;
  more: ComponentChildren;
  state: EntryState;
  /** What is behind it: the budget, who and why, what can be done. */
  children: ComponentChildren;
}

/** A quiet cup over the whole width; pressed, it shows what is behind the figure. */
export function OpenRow({ thing, figure: amount, more, state, children }: OpenRowProps) {
  const isOpen = useSignal(false);
  return (
    <li class="open-entry">
      <Cup
        class="open-row"
        isOpen={isOpen.value}
        onPress={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        <span>{thing}</span>
        <span class="open-figure">{amount}</span>
        <span class="second">{more}</span>
        <span class="second open-state">
          <Mark is={state.is} /> {stateWords(state)}
        </span>
      </Cup>
      {isOpen.value && <div class="open-inside">{children}</div>}
    </li>
  );
}

/** A correction: the old value struck once and readable, the new one bold, who, when and why. */
export interface CorrectionRowProps {
  time: string;
  thing: ComponentChildren;
  was: string;
  now: string;
  by: string;
  when: string;
  reason: string;
  state: EntryState;
  /** Both entries side by side, shown when the row is opened. */
  old?: ComponentChildren | undefined;
  young?: ComponentChildren | undefined;
  act?: ComponentChildren | undefined;
  /** What else is said of the value that counts. */
  more?: ComponentChildren | undefined;
}

/** Opens to both entries side by side where they are given. */
export function CorrectionRow(props: CorrectionRowProps) {
  const isOpen = useSignal(false);
  const opens = props.old !== undefined && props.young !== undefined;
  const more = (
    <>
      {props.more}
      {PARTS.corrected_by(props.when)} <span class="rec">{props.by}</span>: “
      <span class="rec">{props.reason}</span>”
      {opens && (
        <Cup
          class="slim"
          isOpen={isOpen.value}
          onPress={() => {
            isOpen.value = !isOpen.value;
          }}
        >
          {PARTS.old_value} / {PARTS.new_value}
        </Cup>
      )}
      {isOpen.value && (
        <span class="side-by-side">
          <span>{props.old}</span>
          <span>{props.young}</span>
        </span>
      )}
    </>
  );
  return (
    <EntryRow time={props.time} state={props.state} act={props.act} more={more}>
      {props.thing} <del class="struck">{props.was}</del> <b>{props.now}</b>
    </EntryRow>
  );
}

/** Two corrections of one entry: both as cups; until one is chosen the old value counts. */
export interface TwoCorrectionsProps {
  time: string;
  thing: ComponentChildren;
  counts: string;
  both: readonly { id: string; value: string; by: string; when: string }[];
  /** Without it they can only be read: somebody else chooses. */
  onChoose?: ((id: string) => void) | undefined;
}

/** Who and when stands on each; the sentence says which value counts meanwhile. */
export function TwoCorrections({ time, thing, counts, both, onChoose }: TwoCorrectionsProps) {
  return (
    <li class="entry two">
      <span class="entry-time">{time}</span>
      <span class="entry-thing">{thing}</span>
      <span class="entry-state">
        <b>{onChoose === undefined ? PARTS.not_chosen : PARTS.choose_one}</b>
      </span>
      <span class="entry-more">{counts}</span>
      <span class="side-by-side">
        {both.map((each) => {
          const words = (
            <>
              <b>{each.value}</b>
              <span>
                <span class="rec">{each.by}</span> {each.when}
              </span>
            </>
          );
          return onChoose === undefined ? (
            <span key={each.id} class="both-square">
              {words}
            </span>
          ) : (
            <Cup key={each.id} class="both-cup" onPress={() => onChoose(each.id)}>
              {words}
            </Cup>
          );
        })}
      </span>
    </li>
  );
}

/** The list the rows stand in. */
export function Entries({ children, name }: { children: ComponentChildren; name: string }) {
  return (
    <ul class="entries" aria-label={name}>
      {children}
    </ul>
  );
}
