/** A hold in full, and its one form: to decide, for a coordinator, or to put on hold. */
import type { ComponentChildren } from "preact";
import type { BatchState } from "../../calc/batches.ts";
import type { Cause } from "../../calc/holds.ts";
import { Caution } from "../../parts/Caution.tsx";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Entries, EntryRow } from "../../parts/EntryRow.tsx";
import { FieldGroup, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { current } from "../../state/session.ts";
import { APP_TEXT } from "../../text/app.ts";
import { cautionsOfSteps } from "../../text/cautions.ts";
import { HOLD } from "../../text/holds.ts";
import { clockWords, dayWords } from "../../text/numbers.ts";
import { dayOf, zone } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { BatchHeld } from "../common/HeldPlate.tsx";
import { later } from "../common/later.tsx";
import { memberName } from "../common/people.ts";
import { beside, besideNone } from "../common/sentences.ts";
import { entryState } from "../weigh-in/LineEntries.tsx";
import { causeWords, type HeldThing, isLog, openCauses, openLogs } from "./thing.ts";
import { type Holding, useHolding } from "./use_holding.ts";

const HeldLogs = later(
  async () => (await import("./HeldLogs.tsx")).HeldLogs,
  APP_TEXT.part_missing,
);

/** The same screen before and after: what was decided stands below. */
export function Held({ thing }: { thing: HeldThing }) {
  const isHeld = thing.hold?.is_held === true;
  const decides = isHeld && (current.value?.member.roles.includes("coordinator") ?? false);
  const holding = useHolding(thing, decides);
  const asks = decides || !isHeld;
  return (
    <Frame
      where={`${HOLD.where}, ${thing.code}`}
      title={thing.name}
      isRecorded
      gauge={<HeadGauge />}
      benchName={HOLD.bench}
      bench={
        <Foot>
          <BackKey href={thing.href} />
          {asks ? (
            <MainKey
              words={holding.words}
              notReady={holding.lacks?.sentence ?? null}
              onNotReady={() => focusFirst(holding.lacks?.field)}
              onPress={() => void holding.save()}
            />
          ) : (
            <MainKey words={thing.code} href={thing.href} />
          )}
        </Foot>
      }
    >
      <Refusal sentence={besideNone(holding.found.value, ["reason"])} />
      <State thing={thing} />
      {thing.from?.hold?.is_held && (
        <Part title={HOLD.with_batch(thing.from.code ?? "")}>
          <BatchHeld batch={thing.from} />
        </Part>
      )}
      {asks ? (
        <Form thing={thing} holding={holding} decides={decides} />
      ) : (
        <Notice>{HOLD.only_coordinator}</Notice>
      )}
      <Causes thing={thing} />
    </Frame>
  );
}

function State({ thing }: { thing: HeldThing }) {
  const { hold } = thing;
  if (!hold?.is_held) {
    const last = hold?.decisions.at(-1);
    return (
      <Verdict
        verdict="within"
        word={last === undefined ? HOLD.free : HOLD.released}
        why={last?.reason ?? HOLD.free_why}
      />
    );
  }
  const says = thing.batch === null ? HOLD.held_lot : HOLD.held_batch;
  return (
    <Verdict verdict="held" word={says} why={hold.is_decided ? HOLD.decided : HOLD.waits} isLive />
  );
}

function Form(props: { thing: HeldThing; holding: Holding; decides: boolean }) {
  const { thing, holding, decides } = props;
  const { typed, type, found } = holding;
  const put = thing.batch === null ? HOLD.put_lot : HOLD.put_batch;
  return (
    <Part title={decides ? HOLD.decision : put}>
      {decides ? (
        <div id="field-decision">
          <CupChoice
            name={HOLD.decision}
            options={HOLD.decisions}
            chosen={HOLD.decisions.find(({ value }) => value === typed.decision)?.value ?? null}
            onChoose={(decision) => type({ decision })}
          />
        </div>
      ) : (
        <div id="field-because">
          <FieldGroup label={HOLD.because} refusal={null}>
            <CupChoice
              name={HOLD.because}
              options={HOLD.becauses}
              chosen={HOLD.becauses.find(({ value }) => value === typed.because)?.value ?? null}
              onChoose={(because) => type({ because })}
            />
          </FieldGroup>
        </div>
      )}
      <div id="field-reason">
        <TextField
          label={HOLD.reason}
          value={typed.reason}
          onValue={(reason) => type({ reason })}
          lines={3}
          refusal={beside(found.value, "reason")}
        />
      </div>
      {decides && <Caution about="hold" />}
    </Part>
  );
}

function Causes({ thing }: { thing: HeldThing }) {
  const { hold, batch } = thing;
  const [open, logs] = [openCauses(hold), openLogs(hold)];
  const decisions = hold?.decisions ?? [];
  return (
    <>
      {open.length > 0 && (
        <Part title={HOLD.causes}>
          <Entries name={HOLD.causes}>
            {open.map((cause) => (
              <Row key={cause.entry} {...cause}>
                {causeWords(cause, batch)}
                {cause.stands ? "" : `, ${HOLD.no_longer}`}
              </Row>
            ))}
          </Entries>
          {hasCheck(open) && <Cautions batch={batch} />}
        </Part>
      )}
      {batch !== null && logs.length > 0 && <HeldLogs batch={batch} causes={logs} />}
      {decisions.length > 0 && (
        <Part title={HOLD.history}>
          <Entries name={HOLD.history}>
            {decisions.map((each) => (
              <Row key={each.entry} {...each}>
                {HOLD.decided_so[each.decision] ?? each.decision}
              </Row>
            ))}
          </Entries>
        </Part>
      )}
    </>
  );
}

/** A log may name a step, but is not its check. */
function hasCheck(causes: readonly Cause[]): boolean {
  return causes.some((each) => each.step !== null && !isLog(each));
}

/** The cautions of the steps that were checked, in full. */
function Cautions({ batch }: { batch: BatchState | null }) {
  const steps = batch?.steps ?? [];
  const said = new Set(steps.flatMap((step) => step.caution ?? []));
  return (
    <>
      {[...said].map((caution) => (
        <Caution key={caution} about={[]} own={caution} />
      ))}
      <Caution about={[...cautionsOfSteps(steps), "process_limit"]} />
    </>
  );
}

function Row(props: {
  entry: string;
  at: string;
  author: string;
  reason: string | null;
  children: ComponentChildren;
}) {
  const { at, author, reason } = props;
  return (
    <EntryRow
      time={clockWords(at, zone())}
      state={entryState(props.entry)}
      more={
        <>
          <span class="rec">{reason}</span>{" "}
          <span class="second">
            {memberName(author)}, {dayWords(dayOf(at))}
          </span>
        </>
      }
    >
      {props.children}
    </EntryRow>
  );
}
