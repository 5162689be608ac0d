/** The bench of a fill check: the keypad of the open number; a pack is kept, then the next. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { FILL } from "../../text/fill.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { focusFirst } from "../common/focus.ts";
import { NumberKeys } from "../common/NumberKeys.tsx";
import { LABEL_UNITS, nextOpen, weighed } from "./fill.ts";
import type { Filling } from "./use_fill.ts";

/** Keys and the main key. */
export function FillBench({ filling, lot }: { filling: Filling; lot: string }) {
  return (
    <>
      <Keys filling={filling} />
      <Foot>
        <BackKey href={`#/lot/${lot}`} />
        <Main filling={filling} />
      </Foot>
    </>
  );
}

function Keys({ filling }: { filling: Filling }) {
  const { typed, type, open } = filling;
  const field = open.value;
  if (field === "amount" || field === "other") {
    const unit = field === "amount" ? "unit" : "other_unit";
    return (
      <NumberKeys
        key={field}
        typed={typed[field]}
        onTyped={(text) => type({ [field]: text })}
        units={LABEL_UNITS}
        unit={typed[unit]}
        onUnit={(code) => type({ [unit]: code })}
      />
    );
  }
  if (field === "lot_size" || field === "density") {
    return (
      <Keypad
        key={field}
        typed={typed[field]}
        onTyped={(text) => type({ [field]: text })}
        isWhole={field === "lot_size"}
      />
    );
  }
  const masses = field === "empty" ? typed.tares : typed.gross;
  const last = masses.at(-1);
  return (
    <Keypad
      key={field}
      typed={typed.shown}
      onTyped={(shown) => type({ shown })}
      onEnter={() => keep(filling)}
      column={
        last === undefined
          ? []
          : [
              {
                word: FILL.take_last,
                holds: figure(last),
                onPress: () => type(weighed(field, masses.slice(0, -1))),
              },
            ]
      }
    />
  );
}

/** The pack on the scale joins those weighed before. */
function keep({ now, type, open }: Filling): void {
  const field = open.value;
  // A quick hand presses Enter before the screen is drawn again with the last digit.
  const typed = now();
  const shown = typedNumber(typed.shown);
  if ((field !== "empty" && field !== "full") || shown === null) return;
  const masses = field === "empty" ? typed.tares : typed.gross;
  type(weighed(field, [...masses, shown]));
  open.value = nextOpen(field, now());
}

function Main({ filling }: { filling: Filling }) {
  const { typed, open, scale, lacks } = filling;
  const shown = typedNumber(typed.shown);
  const field = open.value;
  if (shown !== null && (field === "empty" || field === "full")) {
    const amount = amountWords(shown, scale?.unit ?? "g");
    const words =
      field === "empty" ? FILL.keep_empty(amount) : FILL.keep_full(amount, typed.gross.length + 1);
    return <MainKey words={words} onPress={() => keep(filling)} />;
  }
  return (
    <MainKey
      words={FILL.save(typed.gross.length)}
      notReady={lacks?.sentence ?? null}
      onNotReady={() => {
        if (lacks?.open !== undefined) open.value = lacks.open;
        if (lacks?.field !== "tares" && lacks?.field !== "gross") focusFirst(lacks?.field);
      }}
      onPress={() => void filling.save()}
    />
  );
}
