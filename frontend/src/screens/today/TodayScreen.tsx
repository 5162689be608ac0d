/** Today: what now. The day as a burette, the batch in hand at its surface, a shelf of signs. */
import { MainKey } from "../../parts/Cup.tsx";
import { DayGlass } from "../../parts/DayGlass.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { isOnlineHint } from "../../state/outbox.ts";
import { current, needsSignIn } from "../../state/session.ts";
import { kitchen } from "../../state/settings.ts";
import { isStillLoading } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { type UnderWay, underWay } from "../../state/today.ts";
import { clockWords, longDayWords } from "../../text/numbers.ts";
import { TODAY } from "../../text/today.ts";
import { pathOfAct } from "../common/batches.ts";
import { dayOf, zone } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { useNow } from "../common/use_now.ts";
import { Around, WhereAreYou } from "./Around.tsx";
import { hourOf, openHours } from "./day.ts";
import { Shelf } from "./Shelf.tsx";
import { dayThings } from "./things.tsx";
import "./today.css";

/** `#/`. */
export function Screen() {
  const now = useNow().value;
  const today = dayOf(now);
  const hour = hourOf(now, zone());
  const { opens, closes } = openHours(hour);
  const things = dayThings(today);
  return (
    <Frame
      where={
        <>
          <span class="rec">{current.value?.member.name}</span>
          {kitchen.value === null ? "" : `, ${nameOf("place", kitchen.value)}`}
        </>
      }
      title={longDayWords(today)}
      calm={calmWords()}
      gauge={<HeadGauge />}
      benchName={TODAY.bench}
      bench={
        <Foot>
          <NextKey next={underWay.value[0] ?? null} />
        </Foot>
      }
      side={
        <>
          <Shelf />
          <Around today={today} />
        </>
      }
    >
      <WhereAreYou />
      <DayGlass
        says={TODAY.day(
          String(opens),
          String(closes),
          clockWords(new Date(now).toISOString(), zone()),
        )}
        opens={opens}
        closes={closes}
        now={hour}
        things={
          things.length > 0
            ? things
            : [{ id: "none", hour: null, isNow: true, shown: <Notice>{TODAY.empty}</Notice> }]
        }
      />
    </Frame>
  );
}

function calmWords(): string | null {
  if (needsSignIn.value) return TODAY.sign_in;
  if (!isOnlineHint.value) return TODAY.no_signal;
  return isStillLoading.value ? TODAY.loading : null;
}

function NextKey({ next }: { next: UnderWay | null }) {
  if (next === null) return <MainKey words={TODAY.main.start} href="#/start" />;
  const act = next.next;
  const product = nameOf("recipe", next.recipe);
  const name =
    act.act === "weigh_in" ? nameOf("material", act.material ?? null).toLowerCase() : product;
  return <MainKey words={TODAY.main[act.act](name)} href={`#${pathOfAct(act)}`} />;
}
