/** Who worked on a batch and how long. */
import { useSignal } from "@preact/signals";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { NumberField, TickField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { record } from "../../state/record.ts";
import { current } from "../../state/session.ts";
import { remember, remembered } from "../../state/settings.ts";
import { members } from "../../state/stock.ts";
import { MONEY, WORK } from "../../text/money.ts";
import { batchOf, recipeNameOf } from "../common/batches.ts";
import { type Drafted, useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Picker } from "../common/Picker.tsx";
import { beside, besideNone, type Hindrance, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { seesCosts, workerName } from "./costs.ts";
import { Kept } from "./Kept.tsx";
import { labourOf, type WorkTyped, workMissing } from "./typed.ts";

const REMEMBERED = "money.member";

/** `#/cost/:batch/work`. */
export function Screen({ params }: { params: Record<string, string> }) {
  return <Form key={params.batch} batch={params.batch ?? ""} />;
}

/** The member chosen last on this phone, else the person on the screen. */
function proposed(): WorkTyped {
  const last = remembered(REMEMBERED);
  const known = members.value.some((each) => each.id === last && !each.has_left);
  const member = known ? String(last) : (current.value?.member.id ?? "");
  return { member, name: "", minutes: "", is_paid: true };
}

function Form({ batch }: { batch: string }) {
  const form = useDrafted<WorkTyped>(`cost/${batch}/work`, proposed());
  const found = useFound(form.typed);
  const kept = useSignal<{ entry: string; words: string } | null>(null);
  const typed = form.typed.value;
  const state = batchOf(batch)?.state ?? null;
  const lacks = workMissing(typed);
  const where = `${MONEY.work}, ${state?.code ?? ""}`;
  const on = seesCosts()
    ? { words: MONEY.see_cost, href: `#/cost/${batch}` }
    : { words: MONEY.to_batch, href: `#/batch/${batch}` };

  async function save() {
    const body = labourOf(typed, batch);
    const words = WORK.done(workerName(typed.member || typed.name), typed.minutes);
    const answer = await record("labour", body);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field);
    if (typed.member !== "") remember(REMEMBERED, typed.member);
    form.clear();
    kept.value = { entry: answer.saved.id, words };
  }

  if (kept.value !== null) {
    return (
      <Kept
        where={where}
        title={WORK.title}
        {...kept.value}
        on={on}
        onMore={() => {
          kept.value = null;
        }}
      />
    );
  }
  return (
    <Frame
      where={where}
      title={state === null ? WORK.title : recipeNameOf(state)}
      isRecorded={state !== null}
      gauge={<HeadGauge />}
      benchName={WORK.bench}
      hasKeypad
      bench={
        <>
          <Keypad typed={typed.minutes} onTyped={(minutes) => form.type({ minutes })} />
          <Foot>
            <BackKey href={on.href} />
            <MainKey
              words={WORK.save(typed.minutes)}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => focusFirst(lacks?.field)}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      {state === null && <Notice>{MONEY.not_here}</Notice>}
      <Refusal sentence={besideNone(found.value, ["member", "name", "minutes"])} />
      <Fields form={form} found={found.value} />
    </Frame>
  );
}

function Fields({ form, found }: { form: Drafted<WorkTyped>; found: Hindrance | null }) {
  const typed = form.typed.value;
  return (
    <>
      <Picker
        field="member"
        label={WORK.who}
        items={members.value
          .filter((each) => !each.has_left)
          .map((each) => ({ id: each.id, name: each.name }))}
        chosen={typed.member}
        onChoose={(member) => form.type({ member: member ?? "" })}
        none={WORK.none}
        newName={typed.name}
        write={WORK.somebody_else}
        onName={(name) => form.type({ name })}
        refusal={beside(found, "member") ?? beside(found, "name")}
      />
      <div id="field-minutes">
        <NumberField
          label={WORK.minutes}
          typed={typed.minutes}
          unit="min"
          isOpen
          onOpen={() => undefined}
          refusal={beside(found, "minutes")}
        />
      </div>
      <TickField
        label={WORK.paid}
        hint={WORK.unpaid_hint}
        isTicked={typed.is_paid}
        onTicked={(is_paid) => form.type({ is_paid })}
      />
    </>
  );
}
