/** Below the shelf, or beside the day: where one is, what to use first, what was written last. */
import type { BatchState } from "../../calc/batches.ts";
import { Cup } from "../../parts/Cup.tsx";
import { Part } from "../../parts/Plain.tsx";
import { current } from "../../state/session.ts";
import { kitchen, setKitchen } from "../../state/settings.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { nameOf, places } from "../../state/stock.ts";
import { amountWords, clockWords, dayWords } from "../../text/numbers.ts";
import { TODAY } from "../../text/today.ts";
import { dayOf, zone } from "../common/edge.ts";
import { later } from "../common/later.tsx";
import { amountText, lifeShown, materialOf } from "../common/lots.ts";
import { useFirst, type Written, writtenLast } from "./day_around.ts";

// The day comes up without its texts.
const Caution = later(async () => (await import("../../parts/Caution.tsx")).Caution);
const TimersAndChecks = later(async () => (await import("./TimersAndChecks.tsx")).TimersAndChecks);

/** Who makes is asked for the kitchen, who sells for the stall. */
function isWorkedAt(sort: unknown): boolean {
  const roles = current.value?.member.roles ?? [];
  return sort === "stall" ? roles.includes("seller") : sort === "kitchen" && !isOnlySeller(roles);
}

function isOnlySeller(roles: readonly string[]): boolean {
  return roles.every((role) => role === "seller");
}

/** Kitchens and stalls as cups, until one is chosen on this phone. */
export function WhereAreYou() {
  const choices = places.value.filter(
    ({ is_retired, fields }) => !is_retired && isWorkedAt(fields.sort),
  );
  if (kitchen.value !== null || choices.length === 0) return null;
  return (
    <fieldset class="where-are-you">
      <legend class="second">{TODAY.here}</legend>
      {choices.map((place) => (
        <Cup key={place.id} onPress={() => setKitchen(place.id)}>
          {place.name}
        </Cup>
      ))}
    </fieldset>
  );
}

/** Lists with their own empty words. */
export function Around({ today }: { today: string }) {
  const soon = useFirst(today);
  const written = writtenLast(sheetsOf<BatchState>("batch").value.map(({ state }) => state));
  return (
    <>
      <TimersAndChecks />
      <Part title={TODAY.use_first}>
        {soon.length === 0 && <p class="second">{TODAY.nothing_soon}</p>}
        <ul class="around">
          {soon.map((lot) => (
            <li key={lot.lot}>
              <Cup href={`#/lot/${lot.lot}`}>
                <span class="rec">{nameOf("material", lot.material)}</span>
                <b>{amountText(lot.amount, lot.unit, materialOf(lot.material))}</b>
                <span class="second">{lifeShown(lot.life, lot.made_on, today).words}</span>
              </Cup>
            </li>
          ))}
        </ul>
        {soon.length > 0 && <Caution about="shelf_life" />}
      </Part>
      <Part title={TODAY.written_last}>
        {written.length === 0 && <p class="second">{TODAY.nothing_written}</p>}
        <ul class="around">
          {written.map((each) => (
            <WrittenRow key={each.id} written={each} today={today} />
          ))}
        </ul>
      </Part>
      {kitchen.value !== null && (
        <p class="at-kitchen">
          <span>
            {TODAY.you_are_at} <span class="rec">{nameOf("place", kitchen.value)}</span>
          </span>
          <Cup onPress={() => setKitchen(null)}>{TODAY.elsewhere}</Cup>
        </p>
      )}
    </>
  );
}

function WrittenRow({ written, today }: { written: Written; today: string }) {
  const { at, batch, material, says, amount, unit } = written;
  const on = dayOf(at);
  return (
    <li>
      <Cup href={`#/batch/${batch.batch}`}>
        <span class="rec">{material === null ? says : nameOf("material", material)}</span>
        <b>{amount === null ? "" : amountWords(amount, unit)}</b>
        <span class="second">
          {on === today ? clockWords(at, zone()) : dayWords(on)}{" "}
          <span class="code">{batch.code}</span>
        </span>
      </Cup>
    </li>
  );
}
