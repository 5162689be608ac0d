/** The bench of a log: keys of the open number, keep a row, go on, save. */
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { HEAT } from "../../text/heat.ts";
import { minutesText, shortMinutes } from "../../text/heat_results.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { nowMs } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { isRead } from "./heat.ts";
import { lacksAsked } from "./lacks.ts";
import { type Heating, type HeatOpen, keepRow, rowSecond } from "./use_heat.ts";

const CHARS_MOST = 8;
const ASKED: readonly HeatOpen[] = ["t_ref", "z", "wanted_min", "from_min", "to_min", "every_min"];

/** Whether the page that is shown asks for numbers at all. */
export function hasKeys({ typed, open }: Heating): boolean {
  return typed.is_asked ? !isRead(typed.how) : ASKED.includes(open.value);
}

/** Keys and the main key; back goes a page back before it leaves. */
export function HeatBench({ heating, back }: { heating: Heating; back: string }) {
  const { typed, type } = heating;
  return (
    <>
      {hasKeys(heating) && <Keys heating={heating} />}
      <Foot>
        {typed.is_asked ? (
          <BackKey onPress={() => type({ is_asked: false })} />
        ) : (
          <BackKey href={back} />
        )}
        {typed.is_asked ? <RowsMain heating={heating} /> : <AskedMain heating={heating} />}
      </Foot>
    </>
  );
}

function Keys({ heating }: { heating: Heating }) {
  const { typed, type, open } = heating;
  const isFirst = typed.how === "timer" && open.value === "minutes";
  const field = typed.is_asked && isFirst ? "degrees" : open.value;
  const last = typed.is_asked ? typed.temperatures.at(-1) : undefined;
  const takeOut = {
    word: HEAT.take_last,
    holds: figure(last),
    onPress: () =>
      type({
        at_s: typed.at_s.slice(0, -1),
        temperatures: typed.temperatures.slice(0, -1),
      }),
  };
  return (
    <Keypad
      key={field}
      typed={typed[field]}
      onTyped={(text) => type({ [field]: text })}
      isSigned={field === "degrees" || field === "t_ref"}
      mostChars={CHARS_MOST}
      onEnter={() => {
        if (field === "minutes") open.value = "degrees";
        else if (field === "degrees") keepRow(heating);
      }}
      column={last === undefined ? [] : [takeOut]}
    />
  );
}

function AskedMain({ heating }: { heating: Heating }) {
  const { typed, type, open } = heating;
  const lacks = lacksAsked(typed);
  const starts = typed.how === "timer" && typed.timer_began_ms === 0;
  return (
    <MainKey
      words={starts ? HEAT.start_timer : HEAT.go_on}
      notReady={lacks?.sentence ?? null}
      onNotReady={() => focusFirst(lacks?.field)}
      onPress={() => {
        open.value = typed.how === "timer" ? "degrees" : "minutes";
        type({ is_asked: true, ...(starts ? { timer_began_ms: nowMs() } : {}) });
      }}
    />
  );
}

function RowsMain({ heating }: { heating: Heating }) {
  const { typed, lacks } = heating;
  const isHalf = typedNumber(typed.degrees) !== null || typedNumber(typed.minutes) !== null;
  if (!isRead(typed.how) && isHalf) return <RowMain heating={heating} />;
  return (
    <MainKey
      words={HEAT.save(heating.rows.at_s.length)}
      notReady={lacks?.sentence ?? null}
      onNotReady={() => focusFirst(lacks?.field)}
      onPress={() => void heating.save()}
    />
  );
}

/** A row half typed goes on to its other number, a whole one is kept. */
function RowMain({ heating }: { heating: Heating }) {
  const { typed, open } = heating;
  const degrees = typedNumber(typed.degrees);
  const at = rowSecond(typed);
  const go = (field: HeatOpen) => () => {
    open.value = field;
  };
  if (degrees === null) return <MainKey words={HEAT.to_temperature} onPress={go("degrees")} />;
  if (at === null) return <MainKey words={HEAT.say_minutes} onPress={go("minutes")} />;
  const shown = amountWords(degrees, typed.unit);
  return (
    <MainKey
      words={HEAT.keep_row(amountWords(shortMinutes(minutesText(at)), "min"), shown)}
      onPress={() => keepRow(heating)}
    />
  );
}
