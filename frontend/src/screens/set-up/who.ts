/** Who may write which definition, and whose names stand beside one that is only to be read. */
import { KINDS, type KindName } from "../../entries/kinds.ts";
import { current } from "../../state/session.ts";
import { members } from "../../state/stock.ts";
import { SET_UP } from "../../text/set_up.ts";

const NAMES_MAX = 3;

/** Whether the person on the screen may write this kind; the server decides the same way. */
export function mayWrite(kind: KindName): boolean {
  const { written_by } = KINDS[kind];
  return written_by !== "coordinator" || isCoordinator();
}

/** Whether the person on the screen is a coordinator. */
export function isCoordinator(): boolean {
  return current.value?.member.roles.includes("coordinator") ?? false;
}

/** "Changed by coordinators: Ilsa, Bettina". */
export function whoMayWrite(): string {
  const names = members.value
    .filter((each) => !each.has_left && each.roles.includes("coordinator"))
    .map((each) => each.name)
    .slice(0, NAMES_MAX);
  return names.length === 0 ? SET_UP.only_nobody : SET_UP.only(names.join(", "));
}
