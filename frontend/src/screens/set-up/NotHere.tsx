/** A definition this phone does not know: what to do, and the way back. */
import { AREAS, SET_UP } from "../../text/set_up.ts";
import { Instead } from "../common/Instead.tsx";

/** `area` names the list to go back to. */
export function NotHere({ area }: { area: string }) {
  const title = AREAS[area]?.title ?? SET_UP.where;
  return (
    <Instead
      where={SET_UP.where}
      title={title}
      benchName={SET_UP.bench}
      back={`#/set-up/${area}`}
      on={{ words: title, href: `#/set-up/${area}` }}
      says={SET_UP.not_here}
    />
  );
}
