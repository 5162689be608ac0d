/** Who worked on a batch and how long. */
import { NumberField, TickField } from "../../parts/Fields.tsx";
import { current } from "../../state/session.ts";
import { remember, remembered } from "../../state/settings.ts";
import { members } from "../../state/stock.ts";
import { MONEY, WORK } from "../../text/money.ts";
import { type Drafted, useDrafted } from "../common/drafted.ts";
import { Picker } from "../common/Picker.tsx";
import { beside, type Hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { AddForm } from "./AddForm.tsx";
import { seesCosts, workerName } from "./costs.ts";
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
  const typed = form.typed.value;
  const on = seesCosts()
    ? { words: MONEY.see_cost, href: `#/cost/${batch}` }
    : { words: MONEY.to_batch, href: `#/batch/${batch}` };
  return (
    <AddForm
      batch={batch}
      where={MONEY.work}
      title={WORK.title}
      benchName={WORK.bench}
      on={on}
      number={typed.minutes}
      onNumber={(minutes) => form.type({ minutes })}
      save={WORK.save(typed.minutes)}
      lacks={workMissing(typed)}
      found={found}
      fields={["member", "name", "minutes"]}
      entry={() => ({
        kind: "labour",
        body: labourOf(typed, batch),
        words: WORK.done(workerName(typed.member || typed.name), typed.minutes),
      })}
      onKept={() => {
        if (typed.member !== "") remember(REMEMBERED, typed.member);
        form.clear();
      }}
    >
      <Fields form={form} found={found.value} />
    </AddForm>
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
