/** The bench of a drill: keypad and keep, the choice of a scale, or save. */
import { Choices } from "../../parts/Choices.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { amountWords } from "../../text/numbers.ts";
import { DRILL } from "../../text/skills.ts";
import { LEFT_OUT, offTheScale, STEPS_COUNT, weighingTurn } from "./asked.ts";
import type { Drilling } from "./use_drill.ts";

interface BenchProps {
  drilling: Drilling;
  /** False before the first question, or when a drill half done was come back to. */
  isAsking: boolean;
  onAsk: () => void;
  onLeave: () => void;
}

/** What the thumbs have at this step. */
export function DrillBench(props: BenchProps) {
  const { drilling, isAsking } = props;
  if (!isAsking) return <Beginning {...props} />;
  const turn = weighingTurn(drilling.typed.at);
  if (turn > 0 && drilling.scale === null) return <ScaleChoice {...props} />;
  if (drilling.typed.at === STEPS_COUNT - 1) {
    return (
      <Foot>
        <BackKey onPress={drilling.back} />
        <MainKey words={DRILL.save} onPress={() => void drilling.save()} />
      </Foot>
    );
  }
  return <Reading {...props} />;
}

function Beginning({ drilling, onAsk }: BenchProps) {
  const isHalfDone = drilling.typed.seed !== null;
  function afresh() {
    drilling.begin();
    onAsk();
  }
  return (
    <>
      {isHalfDone && (
        <p class="afresh">
          <Cup onPress={afresh}>{DRILL.afresh}</Cup>
        </p>
      )}
      <Foot>
        <BackKey href="#/skills" />
        <MainKey
          words={isHalfDone ? DRILL.go_on : DRILL.begin}
          onPress={isHalfDone ? onAsk : afresh}
        />
      </Foot>
    </>
  );
}

function Reading({ drilling, onLeave }: BenchProps) {
  const { question, scale, read, typed } = drilling;
  const number = typedNumber(read);
  const turn = weighingTurn(typed.at);
  const amount = amountWords(number, question?.unit ?? scale?.unit);
  const hinders = number === null ? DRILL.type_first : offTheScale(question, scale, number);
  const keep = () => {
    if (hinders === null) drilling.next();
  };
  return (
    <>
      <Keypad
        typed={read}
        onTyped={drilling.onRead}
        isSigned={question?.low.startsWith("-") ?? false}
        onEnter={keep}
      />
      <Foot>
        <BackKey onPress={typed.at === 0 ? onLeave : drilling.back} />
        <MainKey
          words={turn > 0 ? DRILL.keep_again(amount, turn) : DRILL.keep(amount)}
          notReady={hinders}
          onPress={keep}
        />
      </Foot>
    </>
  );
}

function ScaleChoice({ drilling }: BenchProps) {
  const { scales, choose, back } = drilling;
  return (
    <>
      <p class="asks">{DRILL.which_scale}</p>
      <div class="bench-list">
        <Choices
          name={DRILL.which_scale}
          items={[
            ...scales.map((each) => ({
              id: each.id,
              name: each.name,
              right: each.division === null ? "" : amountWords(each.division, each.unit),
            })),
            { id: LEFT_OUT, name: DRILL.no_scale, isRecorded: false },
          ]}
          chosen={null}
          onChoose={(id) => choose(scales.find((each) => each.id === id) ?? null)}
          none={DRILL.none}
        />
      </div>
      <Foot>
        <BackKey onPress={back} />
      </Foot>
    </>
  );
}
