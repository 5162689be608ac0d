/** The trainer's view: each member's last drill, and what the class says skill by skill. */
import { classFigures, type InClass } from "../../calc/skill_class.ts";
import type { SkillState } from "../../calc/skills.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { sheetsOf } from "../../state/sheets.ts";
import { members } from "../../state/stock.ts";
import { amountWords, dayWords, figure } from "../../text/numbers.ts";
import { SKILLS } from "../../text/skills.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { ClassSkills, ClassWeighings } from "./ClassSkills.tsx";
import { reachOf } from "./OverTime.tsx";
import { Strip } from "./Strip.tsx";
import { meanShown, signedFigure, spreadShown } from "./says.ts";
import "./training.css";

/** Everybody who is here; those who left only stand in the figures of their time. */
export function ClassView() {
  const states = sheetsOf<SkillState>("skill").value.map(({ state }) => state);
  const here = members.value.filter((each) => !each.has_left);
  const made = classFigures(states.filter((state) => here.some(({ id }) => id === state.member)));
  const reach = reachOf(made.members);
  return (
    <Frame
      where={SKILLS.where}
      title={SKILLS.class_title}
      gauge={<HeadGauge />}
      calm={SKILLS.in_divisions}
      benchName={SKILLS.bench}
      side={
        made.members.length > 0 && (
          <>
            <ClassSkills skills={made.skills} />
            <ClassWeighings weighings={made.weighings} />
          </>
        )
      }
      bench={
        <Foot>
          <BackKey href="#/" />
          <MainKey words={SKILLS.start} href="#/drill" />
        </Foot>
      }
    >
      {made.members.length === 0 && <Notice>{SKILLS.nobody}</Notice>}
      <ul class="class-list">
        {here.map(({ id, name }) => (
          <li key={id}>
            <Reader
              member={id}
              name={name}
              last={made.members.find((each) => each.member === id) ?? null}
              reach={reach}
            />
          </li>
        ))}
      </ul>
    </Frame>
  );
}

interface ReaderProps {
  member: string;
  name: string;
  last: InClass | null;
  reach: number;
}

function Reader({ member, name, last, reach }: ReaderProps) {
  return (
    <Cup class="reader" href={`#/skills/${member}`}>
      <span class="rec">{name}</span>
      <span class="second">{last === null ? SKILLS.no_drill : dayWords(last.on)}</span>
      {last !== null && (
        <>
          <Strip figures={last} reach={reach} />
          <b>
            {signedFigure(meanShown(last.bias, last.spread))}
            <small> ± {figure(spreadShown(last.spread))}</small>
          </b>
          {last.weighing !== null && (
            <span class="second repeats">
              {SKILLS.repeats} {amountWords(spreadShown(last.weighing.s), last.weighing.unit)}
            </span>
          )}
          <span class="second count">{SKILLS.drills(last.drills_count)}</span>
        </>
      )}
    </Cup>
  );
}
