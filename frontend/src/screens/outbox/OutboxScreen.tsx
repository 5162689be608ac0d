/** Outbox: being sure. What waits, since when, what is kept aside, and the phone it stands on. */
import { useSignal } from "@preact/signals";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { WaitingGauge } from "../../parts/WaitingGauge.tsx";
import {
  clockOffByMs,
  handOverNow,
  isOnlineHint,
  lastExchangeAt,
  lastTrouble,
  mustUpgrade,
  oldestWaitingAt,
  waiting,
} from "../../state/outbox.ts";
import { current, needsSignIn, signOut } from "../../state/session.ts";
import { OUTBOX } from "../../text/outbox.ts";
import { waitingStage } from "../common/HeadGauge.tsx";
import { useNow } from "../common/use_now.ts";
import { Kept } from "./Kept.tsx";
import { clockSentence, momentOf } from "./moments.ts";
import { ThisPhone } from "./ThisPhone.tsx";
import "./outbox.css";

/** Everything said here is true without signal too. */
export function Screen() {
  const isLeaving = useSignal(false);
  const asksToStay = useSignal<number | null>(null);
  async function leave() {
    isLeaving.value = false;
    const answer = await signOut();
    asksToStay.value = "waiting" in answer ? answer.waiting : null;
  }
  function stay() {
    isLeaving.value = false;
    asksToStay.value = null;
  }
  return (
    <Frame
      where={
        <>
          {OUTBOX.where}, <span class="rec">{current.value?.member.name ?? OUTBOX.nobody}</span>
        </>
      }
      title={OUTBOX.title}
      calm={isOnlineHint.value ? undefined : OUTBOX.no_signal}
      benchName={OUTBOX.bench}
      side={<ThisPhone onSignOut={() => (isLeaving.value = true)} />}
      bench={
        asksToStay.value !== null ? (
          <BeforeLeaving count={asksToStay.value} onStay={stay} />
        ) : isLeaving.value ? (
          <Leaving onStay={stay} onLeave={() => void leave()} />
        ) : (
          <Keys />
        )
      }
    >
      <Gauge />
      <Warnings />
      <Kept />
    </Frame>
  );
}

function Gauge() {
  const now = useNow().value;
  const count = waiting.value.length;
  const heard = lastExchangeAt.value;
  const oldest = oldestWaitingAt.value;
  const since = count === 0 || oldest === null ? null : OUTBOX.since(momentOf(oldest, now));
  return (
    <div class="outbox-gauge" role="status">
      <WaitingGauge
        count={count}
        stage={waitingStage(now)}
        isLarge
        since={[
          since,
          heard === null ? OUTBOX.never_heard : OUTBOX.last_heard(momentOf(heard, now)),
        ]
          .filter(Boolean)
          .join(", ")}
      />
    </div>
  );
}

function Warnings() {
  const clock = clockSentence(clockOffByMs.value);
  return (
    <>
      {needsSignIn.value && (
        <Notice>
          {OUTBOX.must_sign_in} <Cup href="#/sign-in">{OUTBOX.sign_in_again}</Cup>
        </Notice>
      )}
      {lastTrouble.value !== null && isOnlineHint.value && (
        <Notice isLive>{OUTBOX.no_answer}</Notice>
      )}
      {clock !== null && <Notice>{clock}</Notice>}
      {mustUpgrade.value && <Notice>{OUTBOX.must_upgrade}</Notice>}
    </>
  );
}

function Keys() {
  return (
    <Foot>
      <BackKey href="#/" />
      <MainKey words={OUTBOX.hand_over} onPress={() => handOverNow()} />
    </Foot>
  );
}

/** One tap beside "Change person" must not empty a phone that needs signal to come back. */
function Leaving({ onStay, onLeave }: { onStay: () => void; onLeave: () => void }) {
  return (
    <>
      <p class="asks" role="alert">
        {OUTBOX.leave_asks}
      </p>
      <p class="second">{OUTBOX.leave_why}</p>
      <Foot>
        <BackKey onPress={onStay} />
        <MainKey words={OUTBOX.sign_out} onPress={onLeave} />
      </Foot>
    </>
  );
}

/** Signing out with entries waiting: hand over first, or stay (R61). */
function BeforeLeaving({ count, onStay }: { count: number; onStay: () => void }) {
  return (
    <>
      <p class="asks" role="alert">
        {OUTBOX.sign_out_asks(count)}
      </p>
      <p class="second">{OUTBOX.sign_out_why}</p>
      <Cup onPress={onStay}>{OUTBOX.stay}</Cup>
      <Foot>
        <BackKey onPress={onStay} />
        <MainKey words={OUTBOX.hand_over} onPress={() => handOverNow()} />
      </Foot>
    </>
  );
}
