/** People: who is here and what they do, and the way to let somebody join. */
import { current } from "../../state/session.ts";
import { type MemberShown, members } from "../../state/stock.ts";
import { MEMBERS, VALUES } from "../../text/set_up.ts";
import { AreaFrame } from "./AreaFrame.tsx";
import { isCoordinator } from "./who.ts";
import "./set_up.css";

/** `#/set-up/people`. */
export function Screen() {
  return (
    <AreaFrame
      area="people"
      items={members.value.map((each) => ({
        id: each.id,
        name: each.name,
        sub: rolesOf(each),
        ...rightOf(each),
      }))}
      mayAdd={isCoordinator()}
    />
  );
}

function rolesOf(member: MemberShown): string {
  return member.roles.map((role) => VALUES[role] ?? role).join(", ");
}

function rightOf(member: MemberShown): { right?: string } {
  if (member.has_left) return { right: MEMBERS.left };
  return member.id === current.value?.member.id ? { right: MEMBERS.you } : {};
}
