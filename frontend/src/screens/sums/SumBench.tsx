/** The bench of a sum: the keypad of the open number; noting the answer on a batch. */
import { useSignal } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { underWay } from "../../state/today.ts";
import { SUMS } from "../../text/sums.ts";
import { focusFirst } from "../common/focus.ts";
import { NumberKeys } from "../common/NumberKeys.tsx";
import { unitOf } from "./plan.ts";
import type { Sum } from "./use_sum.ts";

/** `batch` is the one the sum was opened from; else it is asked for where several are under way. */
export function SumBench({ sum, batch }: { sum: Sum; batch: BatchState | null }) {
  const isAsking = useSignal(false);
  return (
    <>
      {isAsking.value ? (
        <WhichBatch
          onChoose={(id) => {
            isAsking.value = false;
            void sum.note(id);
          }}
        />
      ) : (
        <Keys sum={sum} />
      )}
      <Foot>
        <BackKey href={batch === null ? "#/sums" : `#/batch/${batch.batch}/sums`} />
        <NoteKey
          sum={sum}
          batch={batch}
          onAsk={() => {
            isAsking.value = true;
          }}
        />
      </Foot>
    </>
  );
}

function Keys({ sum }: { sum: Sum }) {
  const { numberOpen: number, typed, type } = sum;
  if (number === null) return null;
  return (
    <NumberKeys
      key={number.key}
      typed={typed[number.key] ?? ""}
      onTyped={(text) => type({ [number.key]: text })}
      units={number.units}
      unit={unitOf(typed, number)}
      onUnit={(unit) => type({ [number.unit_key ?? ""]: unit })}
    />
  );
}

function WhichBatch({ onChoose }: { onChoose: (batch: string) => void }) {
  return (
    <>
      <p class="asks">{SUMS.note_which}</p>
      <CupChoice
        name={SUMS.note_which}
        options={underWay.value.map(({ batch, code }) => ({ value: batch, word: code }))}
        chosen={null}
        onChoose={onChoose}
      />
    </>
  );
}

interface NoteKeyProps {
  sum: Sum;
  batch: BatchState | null;
  onAsk: () => void;
}

/** Only a found answer can be noted; where there is no batch the key goes back to all sums. */
function NoteKey({ sum, batch, onAsk }: NoteKeyProps) {
  const { answer, open } = sum;
  const batches = underWay.value;
  const only = batch ?? (batches.length === 1 ? batches[0] : undefined);
  if (answer.is === "missing") {
    return (
      <MainKey
        words=""
        notReady={answer.sentence}
        onNotReady={() => {
          open.value = answer.key;
          focusFirst(answer.key);
        }}
      />
    );
  }
  if (sum.isNoted && batch !== null) {
    return <MainKey words={SUMS.batch} href={`#/batch/${batch.batch}`} />;
  }
  if (answer.is === "refused" || sum.isNoted || (only === undefined && batches.length === 0)) {
    return (
      <MainKey words={SUMS.all} href={batch === null ? "#/sums" : `#/batch/${batch.batch}/sums`} />
    );
  }
  if (only === undefined) return <MainKey words={SUMS.note("\u2026")} onPress={onAsk} />;
  return <MainKey words={SUMS.note(only.code ?? "")} onPress={() => void sum.note(only.batch)} />;
}
