/** Set up: the areas, how many are there, and what a fresh cooperative does next. */
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Tube, Vessel } from "../../parts/Tube.tsx";
import { recipes } from "../../state/stock.ts";
import { figure } from "../../text/numbers.ts";
import { SAME_NAME } from "../../text/same_name.ts";
import { AREAS, SET_UP } from "../../text/set_up.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { namesakes } from "../common/namesakes.ts";
import { AREA_NAMES, inUse, LIST_AREAS, soFar } from "./areas.ts";
import { type AreaName, isOpen, neededDone, nextArea, type SetUpSoFar } from "./guidance.ts";
import { KeptLine } from "./KeptLine.tsx";
import "./set_up.css";

/** `#/set-up`. */
export function Screen() {
  const there = soFar();
  const next = nextArea(there);
  const { done, all } = neededDone(there);
  const says = SET_UP.done_of(figure(String(done)), figure(String(all)));
  return (
    <Frame
      where={SET_UP.where}
      title={SET_UP.title}
      gauge={<HeadGauge />}
      calm={next === null ? SET_UP.all_done : AREAS[next]?.none}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href="#/" />
          {next === null ? (
            <MainKey words={SET_UP.today} href="#/" />
          ) : (
            <MainKey words={AREAS[next]?.new_one} href={`#${pathOfNew(next)}`} />
          )}
        </Foot>
      }
    >
      {next !== null && (
        <div class="set-up-level">
          <Tube full={done} whole={all} says={null} />
          <b>{says}</b>
        </div>
      )}
      <KeptLine at="/set-up" />
      <ul class="areas">
        {AREA_NAMES.map((area) => (
          <li key={area}>
            <AreaCup area={area} there={there} isNext={area === next} />
          </li>
        ))}
        <li>
          <Cup class="choice area" href="#/set-up/rates">
            <span class="choice-name">
              <span>{SET_UP.rates}</span>
              <span class="second">{SET_UP.rates_why}</span>
            </span>
          </Cup>
        </li>
      </ul>
    </Frame>
  );
}

function pathOfNew(area: AreaName): string {
  return area === "cooperative" ? "/set-up/cooperative" : `/set-up/${area}/new`;
}

function twinsIn(area: AreaName): boolean {
  const { list } = LIST_AREAS.find((each) => each.area === area) ?? {};
  return namesakes(area === "recipes" ? recipes.value : inUse(list?.value ?? [])).size > 0;
}

function AreaCup(props: { area: AreaName; there: SetUpSoFar; isNext: boolean }) {
  const { area, there } = props;
  const words = AREAS[area];
  const count = there[area] ?? 0;
  return (
    <Cup class="choice area" href={`#/set-up/${area}`} isChosen={props.isNext}>
      <Vessel isFull={!isOpen(there, area)} />
      <span class="choice-name">
        <span>{words?.title}</span>
        <span class="second">{count === 0 ? words?.none : words?.why}</span>
      </span>
      {count > 0 && area !== "cooperative" && (
        <span class="choice-right">
          {twinsIn(area) ? <span class="shout">{SAME_NAME.mark}</span> : SET_UP.count(count)}
        </span>
      )}
    </Cup>
  );
}
