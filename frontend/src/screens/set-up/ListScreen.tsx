/** One area as a list: places, instruments, materials, sources, recipients. */
import { useSignal } from "@preact/signals";
import { type Choice, Choices } from "../../parts/Choices.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { goTo } from "../../state/route.ts";
import type { Defined } from "../../state/stock.ts";
import { amountWords } from "../../text/numbers.ts";
import { SAME_NAME } from "../../text/same_name.ts";
import { SET_UP, VALUES } from "../../text/set_up.ts";
import { textField } from "../common/lots.ts";
import { namesakes } from "../common/namesakes.ts";
import { AreaFrame } from "./AreaFrame.tsx";
import { inUse, LIST_AREAS, type ListArea, standing } from "./areas.ts";
import { KeptLine } from "./KeptLine.tsx";
import { mayWrite } from "./who.ts";
import "../common/rows.css";
import "./set_up.css";

const RETIRED_SEARCH_FROM = 20;

/** `#/set-up/:area`; an area nobody knows shows the first list. */
export function Screen({ params }: { params: Record<string, string> }) {
  const found = LIST_AREAS.find((each) => each.area === params.area) ?? LIST_AREAS[0];
  return found === undefined ? null : <AreaList key={found.area} area={found} />;
}

function AreaList({ area }: { area: ListArea }) {
  const used = inUse(area.list.value);
  const twins = namesakes(used);
  return (
    <AreaFrame
      area={area.area}
      items={used.map((each) => choiceOf(each, twins.has(each.id)))}
      mayAdd={mayWrite(area.kind)}
      below={<Retired area={area} />}
    >
      <KeptLine at={`/set-up/${area.area}`} />
      {area.type === "instrument" && used.length > 0 && (
        <p class="key-row">
          <Cup href="#/instruments">{SET_UP.fit_or_due}</Cup>
        </p>
      )}
    </AreaFrame>
  );
}

function Retired({ area }: { area: ListArea }) {
  const isOpen = useSignal(false);
  const retired = standing(area.list.value).filter((each) => each.is_retired);
  if (retired.length === 0) return null;
  return (
    <>
      <p class="key-row">
        <Cup
          isOpen={isOpen.value}
          onPress={() => {
            isOpen.value = !isOpen.value;
          }}
        >
          {isOpen.value ? SET_UP.hide_retired : SET_UP.retired(retired.length)}
        </Cup>
      </p>
      {isOpen.value && (
        <Choices
          name={SET_UP.retired(retired.length)}
          items={retired.map((each) => ({ id: each.id, name: each.name, sub: SET_UP.retired_one }))}
          chosen={null}
          onChoose={(id) => goTo(`/set-up/${area.area}/${id}`)}
          searchFrom={RETIRED_SEARCH_FROM}
        />
      )}
    </>
  );
}

/** Name, sort and what tells it from its like: the step of an instrument, the letters of a material. */
function choiceOf(defined: Defined, isTwin: boolean): Choice {
  const sort = textField(defined, "sort");
  const division = textField(defined, "division");
  const letters = textField(defined, "letters");
  const isContested = defined.findings.some((each) => each.what === "conflict" && !each.is_settled);
  const wrong = isContested ? SET_UP.conflict : isTwin ? SAME_NAME.mark : null;
  const sub = sort === null ? textField(defined, "contact") : (VALUES[sort] ?? sort);
  const tells = division === null ? letters : amountWords(division, textField(defined, "unit"));
  return {
    id: defined.id,
    name: defined.name,
    ...(sub === null ? {} : { sub }),
    right: wrong === null ? (tells ?? undefined) : <span class="shout">{wrong}</span>,
  };
}
