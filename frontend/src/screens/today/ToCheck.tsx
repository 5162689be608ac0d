/** One quiet row for all instruments here that want a check; nothing where all are fit. */
import { Cup } from "../../parts/Cup.tsx";
import { kitchen } from "../../state/settings.ts";
import { FITNESS } from "../../text/fitness.ts";
import { TODAY } from "../../text/today.ts";
import { instrumentsInUse } from "../common/batches.ts";
import { standingOf } from "../common/instruments.ts";
import { toCheck } from "./day_around.ts";

export function ToCheck() {
  const here = instrumentsInUse(kitchen.value).filter((each) => each.is_here);
  const found = toCheck(here.map((each) => standingOf(each.id).is));
  if (found.length === 0) return null;
  const all = found.reduce((sum, [, count]) => sum + count, 0);
  return (
    <ul class="around">
      <li>
        <Cup href="#/instruments">
          <span>{TODAY.to_check}</span>
          <b>{all}</b>
          <span class="second">
            {found.map(([is, count]) => `${count} ${FITNESS[is]}`).join(", ")}
          </span>
        </Cup>
      </li>
    </ul>
  );
}
