/** The frame of a definition: its fields, what two people changed, keep, retire. */
import type { ComponentChildren } from "preact";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { SAME_NAME } from "../../text/same_name.ts";
import { AREAS, SET_UP } from "../../text/set_up.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { namesakes } from "../common/namesakes.ts";
import { besideNone } from "../common/sentences.ts";
import { listOf } from "./areas.ts";
import { Conflicts } from "./Conflicts.tsx";
import { FormKeys } from "./FormKeys.tsx";
import { type FormAtWork, textAt } from "./form.ts";
import { whoMayWrite } from "./who.ts";
import "../common/rows.css";

interface FormFrameProps {
  form: FormAtWork;
  area: string;
  /** The fields in force; null for a new one. */
  inForce: Readonly<Record<string, unknown>> | null;
  findings: Parameters<typeof Conflicts>[0]["findings"];
  /** Fields whose refusals stand beside them. */
  shown: readonly string[];
  side?: ComponentChildren;
  children: ComponentChildren;
}

/** One definition on the sheet, its keypad and its one act on the bench. */
export function FormFrame(props: FormFrameProps) {
  const { form, area, inForce } = props;
  const words = AREAS[area];
  const { name } = inForce ?? {};
  const isTwin = namesakes(listOf(form.plan.type)).has(form.id);
  return (
    <Frame
      where={words?.title ?? SET_UP.where}
      title={typeof name === "string" ? name : (words?.new_title ?? "")}
      isRecorded={typeof name === "string"}
      gauge={<HeadGauge />}
      benchName={SET_UP.bench}
      hasKeypad={Object.keys(form.plan.numbers).length > 0}
      bench={
        <>
          <FormKeys form={form} />
          <Foot>
            <BackKey href={`#${form.plan.back}`} />
            <KeepKey form={form} />
          </Foot>
        </>
      }
      side={props.side}
    >
      <Refusal sentence={besideNone(form.found, props.shown)} />
      {isTwin && typeof name === "string" && <Notice>{SAME_NAME.says(name)}</Notice>}
      {inForce !== null && (
        <Conflicts type={form.plan.type} id={form.id} inForce={inForce} findings={props.findings} />
      )}
      {props.children}
      {inForce !== null && form.canWrite && (
        <Acts form={form} isRetired={inForce.is_retired === true} />
      )}
    </Frame>
  );
}

function KeepKey({ form }: { form: FormAtWork }) {
  const { changed, plan, typed } = form;
  const missing = plan.missing(typed);
  const why = !form.canWrite
    ? whoMayWrite()
    : changed === 0
      ? SET_UP.nothing_changed
      : (missing?.sentence ?? null);
  return (
    <MainKey
      words={changed === null ? SET_UP.keep_new(textAt(typed, "name")) : SET_UP.keep_count(changed)}
      notReady={why}
      onNotReady={() => {
        const field = missing?.field ?? "name";
        if (field in plan.numbers) form.open.value = field;
        focusFirst(field);
      }}
      onPress={() => void form.save()}
    />
  );
}

function Acts({ form, isRetired }: { form: FormAtWork; isRetired: boolean }) {
  const { changed } = form;
  const canRetire = form.plan.type !== "cooperative";
  return (
    <div class="form-acts">
      {changed !== null && changed > 0 && <Cup onPress={form.rubOut}>{SET_UP.rub_out}</Cup>}
      {canRetire && (
        <>
          <Cup onPress={() => void form.retire(!isRetired)}>
            {isRetired ? SET_UP.use_again : SET_UP.retire}
          </Cup>
          <p class="second">{SET_UP.retire_says}</p>
        </>
      )}
    </div>
  );
}
