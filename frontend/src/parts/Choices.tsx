/** Lists to choose from, with a search that reads as one types. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { PARTS } from "../text/parts.ts";
import { Cup } from "./Cup.tsx";

/** One thing to choose. `name` is what the search looks through, with `sub`. */
export interface Choice {
  id: string;
  name: string;
  /** Set in the serif when a person gave the name (default yes). */
  isRecorded?: boolean | undefined;
  sub?: string | undefined;
  right?: ComponentChildren | undefined;
  /** Why it cannot be chosen: it stays readable, with this sentence. */
  refused?: string | undefined;
}

/** `chosen` is the id of the chosen one, or null. */
export interface ChoicesProps {
  name: string;
  items: readonly Choice[];
  chosen: string | null;
  onChoose: (id: string) => void;
  /** A search is offered from this many items on (default 7). */
  searchFrom?: number | undefined;
  none?: string | undefined;
}

const SEARCH_FROM = 7;

/** Lower-cased and without accents, so that "pure" finds "Purée". */
export function folded(text: string): string {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
}

/** Those whose name or second words hold every word of the search, in their order. */
export function found(items: readonly Choice[], search: string): readonly Choice[] {
  const words = folded(search).split(/\s+/).filter(Boolean);
  return items.filter((item) => {
    const text = folded(`${item.name} ${item.sub ?? ""}`);
    return words.every((word) => text.includes(word));
  });
}

/** Rows to choose one of; the whole row is the target. */
export function Choices({ name, items, chosen, onChoose, searchFrom, none }: ChoicesProps) {
  const search = useSignal("");
  const id = useId();
  const shown = found(items, search.value);
  return (
    <fieldset class="choices">
      <legend class="unseen">{name}</legend>
      {items.length >= (searchFrom ?? SEARCH_FROM) && (
        <p class="search">
          <label class="unseen" for={id}>
            {PARTS.search} {name}
          </label>
          <input
            id={id}
            type="search"
            placeholder={PARTS.search}
            value={search.value}
            autocomplete="off"
            onInput={(event) => {
              search.value = event.currentTarget.value;
            }}
          />
        </p>
      )}
      {shown.map((item) => (
        <ChoiceRow
          key={item.id}
          item={item}
          isChosen={item.id === chosen}
          onPress={() => onChoose(item.id)}
        />
      ))}
      {shown.length === 0 && (
        <p class="nothing">{items.length === 0 ? none : PARTS.nothing_found}</p>
      )}
    </fieldset>
  );
}

function ChoiceRow({
  item,
  isChosen,
  onPress,
}: {
  item: Choice;
  isChosen: boolean;
  onPress: () => void;
}) {
  const inside = (
    <>
      <span class="choice-name">
        <span class={item.isRecorded === false ? "" : "rec"}>{item.name}</span>
        {(item.refused ?? item.sub) && <span class="second">{item.refused ?? item.sub}</span>}
      </span>
      {item.right && <span class="choice-right">{item.right}</span>}
    </>
  );
  if (item.refused !== undefined) return <p class="choice refused">{inside}</p>;
  return (
    <Cup class="choice" isChosen={isChosen} onPress={onPress}>
      {inside}
    </Cup>
  );
}

/** A few short words side by side, one of which holds. */
export function CupChoice<Value extends string>({
  name,
  options,
  chosen,
  onChoose,
}: {
  name: string;
  options: readonly { value: Value; word: string }[];
  chosen: Value | null;
  onChoose: (value: Value) => void;
}) {
  return (
    <fieldset class="cup-choice">
      <legend class="unseen">{name}</legend>
      {options.map(({ value, word }) => (
        <Cup key={value} isChosen={value === chosen} onPress={() => onChoose(value)}>
          {word}
        </Cup>
      ))}
    </fieldset>
  );
}
