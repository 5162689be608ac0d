/** People: who is here and what they do, and the way to let somebody join. */
import { Choices } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { goTo } from "../../state/route.ts";
import { current } from "../../state/session.ts";
import { isStillLoading } from "../../state/sheets.ts";
import { type MemberShown, members } from "../../state/stock.ts";
import { AREAS, MEMBERS, SET_UP, VALUES } from "../../text/set_up.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { isCoordinator, whoMayWrite } from "./who.ts";
import "./set_up.css";

/** `#/set-up/people`. */
export function Screen() {
  const words = AREAS.people;
  return (
    <Frame
      where={SET_UP.where}
      title={words?.title ?? ""}
      gauge={<HeadGauge />}
      calm={words?.why}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href="#/set-up" />
          <MainKey
            words={words?.new_one}
            href="#/set-up/people/new"
            notReady={isCoordinator() ? null : whoMayWrite()}
          />
        </Foot>
      }
    >
      <div class="set-up-list">
        <Choices
          name={words?.title ?? ""}
          items={members.value.map((each) => ({
            id: each.id,
            name: each.name,
            sub: rolesOf(each),
            ...rightOf(each),
          }))}
          chosen={null}
          onChoose={(id) => goTo(`/set-up/people/${id}`)}
          none={isStillLoading.value ? SET_UP.loading : words?.none}
        />
      </div>
    </Frame>
  );
}

function rolesOf(member: MemberShown): string {
  return member.roles.map((role) => VALUES[role] ?? role).join(", ");
}

function rightOf(member: MemberShown): { right?: string } {
  if (member.has_left) return { right: MEMBERS.left };
  return member.id === current.value?.member.id ? { right: MEMBERS.you } : {};
}
