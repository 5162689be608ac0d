/** The frame of one line, step or size of a recipe: its keys, and the way back to the recipe. */
import type { ComponentChildren } from "preact";
import { BackKey, MainKey } from "../../../parts/Cup.tsx";
import { Foot, Frame } from "../../../parts/Frame.tsx";
import { focusFirst } from "../../common/focus.ts";
import { HeadGauge } from "../../common/HeadGauge.tsx";
import { FormKeys } from "../FormKeys.tsx";
import type { Bound } from "../form.ts";
import "../../common/rows.css";
import "../set_up.css";

interface ItemFrameProps {
  form: Bound;
  where: string;
  title: string;
  isRecorded?: boolean;
  benchName: string;
  /** The address of the recipe it belongs to. */
  back: string;
  done: string;
  /** What it lacks, and the field that is asked for it; null when it is complete. */
  lacks: { sentence: string; field: string } | null;
  children: ComponentChildren;
}

export function ItemFrame(props: ItemFrameProps) {
  const { form, back, lacks } = props;
  return (
    <Frame
      where={props.where}
      title={props.title}
      isRecorded={props.isRecorded}
      gauge={<HeadGauge />}
      benchName={props.benchName}
      hasKeypad
      bench={
        <>
          <FormKeys form={form} />
          <Foot>
            <BackKey href={`#${back}`} />
            <MainKey
              words={props.done}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => {
                if (lacks === null) return;
                if (lacks.field in form.numbers) form.open.value = lacks.field;
                focusFirst(lacks.field);
              }}
              href={`#${back}`}
            />
          </Foot>
        </>
      }
    >
      {props.children}
    </Frame>
  );
}
