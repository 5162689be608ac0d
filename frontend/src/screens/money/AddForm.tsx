/** Adds a row to what a batch cost: one number on the keypad, then what was kept, and on. */
import { type Signal, useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import type { KindName } from "../../entries/kinds.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { record } from "../../state/record.ts";
import { MONEY } from "../../text/money.ts";
import { batchOf, recipeNameOf } from "../common/batches.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { besideNone, type Hindrance, hindrance } from "../common/sentences.ts";
import { Kept } from "./Kept.tsx";

interface AddFormProps {
  batch: string;
  where: string;
  title: string;
  benchName: string;
  /** Where it goes back to, and on once it is kept. */
  on: { words: string; href: string };
  number: string;
  onNumber: (typed: string) => void;
  save: string;
  lacks: Hindrance | null;
  found: Signal<Hindrance | null>;
  /** Fields that say themselves what was found about them. */
  fields: readonly string[];
  /** What is written, and how it is told afterwards. */
  entry: () => { kind: KindName; body: object; words: string };
  onKept: () => void;
  children: ComponentChildren;
}

export function AddForm(props: AddFormProps) {
  const { batch, title, on, found } = props;
  const kept = useSignal<{ entry: string; words: string } | null>(null);
  const state = batchOf(batch)?.state ?? null;
  const where = `${props.where}, ${state?.code ?? ""}`;

  async function save() {
    const { kind, body, words } = props.entry();
    const answer = await record(kind, body);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field);
    props.onKept();
    kept.value = { entry: answer.saved.id, words };
  }
  const again = () => {
    kept.value = null;
  };
  if (kept.value !== null) {
    return <Kept where={where} title={title} {...kept.value} on={on} onMore={again} />;
  }
  return (
    <Frame
      where={where}
      title={state === null ? title : recipeNameOf(state)}
      isRecorded={state !== null}
      gauge={<HeadGauge />}
      benchName={props.benchName}
      hasKeypad
      bench={<Bench {...props} onSave={() => void save()} />}
    >
      {state === null && <Notice>{MONEY.not_here}</Notice>}
      <Refusal sentence={besideNone(found.value, [...props.fields])} />
      {props.children}
    </Frame>
  );
}

function Bench(props: AddFormProps & { onSave: () => void }) {
  const { lacks } = props;
  return (
    <>
      <Keypad typed={props.number} onTyped={props.onNumber} />
      <Foot>
        <BackKey href={props.on.href} />
        <MainKey
          words={props.save}
          notReady={lacks?.sentence ?? null}
          onNotReady={() => focusFirst(lacks?.field)}
          onPress={props.onSave}
        />
      </Foot>
    </>
  );
}
