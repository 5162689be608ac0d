/** A one-time code for a new member, or for one who forgot the passphrase. It needs signal. */
import { type Signal, useSignal } from "@preact/signals";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { FieldGroup } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { isOnlineHint } from "../../state/outbox.ts";
import { makeJoinCode } from "../../state/session.ts";
import { type MemberShown, members } from "../../state/stock.ts";
import { AREAS, MEMBERS, SET_UP } from "../../text/set_up.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Ticks } from "./FormFields.tsx";
import { type JoinCode, JoinCodeShown } from "./JoinCodeShown.tsx";
import { isCoordinator, whoMayWrite } from "./who.ts";
import "./set_up.css";

const ROLES = ["processor", "seller", "coordinator"] as const;

/** `#/set-up/people/:id`, where `new` is somebody who is not a member yet. */
export function Screen({ params }: { params: Record<string, string> }) {
  const member = members.value.find((each) => each.id === params.id) ?? null;
  const roles = useSignal<readonly string[]>(["processor"]);
  const made = useSignal<JoinCode | null>(null);
  const isAsking = useSignal(false);
  const trouble = useSignal<string | null>(null);

  async function ask() {
    isAsking.value = true;
    const wanted = member === null ? [...roles.value] : [...member.roles];
    const answer = await makeJoinCode(wanted, member?.id);
    isAsking.value = false;
    // A code that was made stays good, also when another one could not be.
    if ("made" in answer) made.value = answer.made;
    trouble.value = "made" in answer ? null : sentenceOf(answer.code);
  }

  const why = notReady(isAsking.value, roles.value.length);
  return (
    <Frame
      where={AREAS.people?.title ?? ""}
      title={member?.name ?? AREAS.people?.new_title ?? ""}
      isRecorded={member !== null}
      gauge={<HeadGauge />}
      calm={member === null ? MEMBERS.for_new : MEMBERS.passphrase}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href="#/set-up/people" />
          <MainKey
            words={keyWords(member, made.value !== null)}
            notReady={why}
            onNotReady={() => focusFirst("roles")}
            onPress={() => void ask()}
          />
        </Foot>
      }
    >
      <Refusal sentence={trouble.value} />
      {made.value === null ? (
        <Before member={member} roles={roles} isToldOff={trouble.value !== null} />
      ) : (
        <JoinCodeShown code={made.value} />
      )}
    </Frame>
  );
}

function Before(props: {
  member: MemberShown | null;
  roles: Signal<readonly string[]>;
  /** The sentence about the signal stands above already. */
  isToldOff: boolean;
}) {
  const { member, roles } = props;
  return (
    <>
      {member === null ? (
        <div id="field-roles">
          <FieldGroup label={MEMBERS.role}>
            <Ticks
              choices={ROLES}
              ticked={roles.value}
              onTicked={(ticked) => {
                roles.value = ticked;
              }}
            />
          </FieldGroup>
        </div>
      ) : (
        <p class="part">{MEMBERS.forgotten}</p>
      )}
      <Notice>{isOnlineHint.value || props.isToldOff ? MEMBERS.signal : MEMBERS.no_signal}</Notice>
    </>
  );
}

function keyWords(member: MemberShown | null, isMade: boolean): string {
  if (isMade) return MEMBERS.make_another;
  return member === null ? MEMBERS.make : MEMBERS.make_for(member.name);
}

function notReady(isAsking: boolean, roleCount: number): string | null {
  if (!isCoordinator()) return whoMayWrite();
  if (isAsking) return MEMBERS.making;
  return roleCount === 0 ? MEMBERS.choose_role : null;
}

function sentenceOf(code: string): string {
  if (code === "no_signal") return MEMBERS.no_signal;
  const isRefused = code === "forbidden" || code === "not_authenticated";
  return isRefused ? MEMBERS.refused : MEMBERS.trouble;
}
