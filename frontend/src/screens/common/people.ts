/** Names of members, the one on the screen included before the first pull. */
import { current } from "../../state/session.ts";
import { members } from "../../state/stock.ts";

/** The name of a member, or nothing while it is not known here: an id tells nobody anything. */
export function memberName(id: string | null): string {
  const own = current.value?.member;
  if (id !== null && own?.id === id) return own.name;
  return members.value.find((each) => each.id === id)?.name ?? "";
}
