/** A reader's sheet: the last drill as rings and figures, what became better, what is done. */
import type { Drill, SkillState, Weighed } from "../../calc/skills.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { Rings } from "../../parts/Rings.tsx";
import { Vessel } from "../../parts/Tube.tsx";
import { current } from "../../state/session.ts";
import { sheet } from "../../state/sheets.ts";
import { amountWords, dayWords, figure } from "../../text/numbers.ts";
import { DRILL, SKILLS, SORT_WORDS, TECHNIQUE_WORDS } from "../../text/skills.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { History } from "../common/History.tsx";
import { BodyInQuestion } from "../common/InQuestion.tsx";
import { memberName } from "../common/people.ts";
import { techniques } from "./Checklist.tsx";
import { drillWords } from "./drill_history.ts";
import { FiguresTable } from "./FiguresTable.tsx";
import { LastReadings } from "./LastReadings.tsx";
import { OverTime } from "./OverTime.tsx";
import { meanShown, numberOf, signedFigure, spreadShown, whatIsSo, whatToDo } from "./says.ts";
import "./training.css";

const DRILLS = ["drill_done"];

/** `member` is whose sheet; one's own leads to a drill. */
export function ReaderView({ member }: { member: string }) {
  const skill = sheet<SkillState>(`skill:${member}`).value?.state ?? null;
  const last = skill?.drills.at(-1) ?? null;
  const isOwn = member === current.value?.member.id;
  const isTrainer = current.value?.member.roles.includes("coordinator") ?? false;
  return (
    <Frame
      where={SKILLS.where}
      title={memberName(member) || SKILLS.where}
      isRecorded
      gauge={<HeadGauge />}
      calm={last === null ? undefined : SKILLS.last(dayWords(last.on))}
      benchName={SKILLS.bench}
      side={skill !== null && last !== null && <Beside skill={skill} last={last} />}
      bench={
        <Foot>
          <BackKey href={isTrainer ? "#/skills" : "#/"} />
          {isOwn ? (
            <MainKey words={SKILLS.start} href="#/drill" />
          ) : (
            <MainKey words={SKILLS.see_class} href="#/skills" />
          )}
        </Foot>
      }
    >
      {skill === null || last === null ? (
        <Notice>{isOwn ? SKILLS.not_here : SKILLS.not_theirs}</Notice>
      ) : (
        <Reader skill={skill} last={last} isOwn={isOwn} />
      )}
      {last === null && isOwn && <p>{DRILL.what}</p>}
    </Frame>
  );
}

interface ReaderProps {
  skill: SkillState;
  last: Drill;
  isOwn: boolean;
}

function Reader({ skill, last, isOwn }: ReaderProps) {
  const { bias, spread } = last.whole;
  const errors = last.scores.flatMap(({ error }) => (error === null ? [] : [numberOf(error)]));
  return (
    <>
      <p class="what-is-so">{whatIsSo(last.whole)}</p>
      <p>{whatToDo(last)}</p>
      <Rings
        errors={errors}
        bias={bias === null ? null : numberOf(bias)}
        spread={spread === null ? null : numberOf(spread)}
        says={SKILLS.rings(
          signedFigure(meanShown(bias, spread)),
          figure(spreadShown(spread)),
          errors.length,
        )}
      />
      <p class="second under-rings">{SKILLS.in_divisions}</p>
      <FiguresTable name={SKILLS.figures} sorts={last.sorts} whole={last.whole} />
      <Weighing skill={skill} />
      <Part title={SKILLS.improved}>
        <Improved skill={skill} />
      </Part>
      <Part title={isOwn ? SKILLS.techniques : SKILLS.techniques_theirs}>
        <ul class="techniques">
          {techniques().map((each) => (
            <li key={each}>
              <Vessel isFull={skill.techniques.includes(each)} />
              <span>{TECHNIQUE_WORDS[each] ?? each}</span>
              <span class="unseen">
                {skill.techniques.includes(each) ? SKILLS.done : SKILLS.open}
              </span>
            </li>
          ))}
        </ul>
      </Part>
    </>
  );
}

function Weighing({ skill: { weighing, drills } }: { skill: SkillState }) {
  if (weighing === null) return null;
  const last = drills.filter((each) => each.weighing !== null).at(-1);
  const { unit, s, mean, count } = weighing;
  return (
    <Part title={SKILLS.weighing}>
      <Facts
        rows={[
          { name: SKILLS.repeats, value: amountWords(spreadShown(s), unit) },
          { name: SKILLS.mean, value: amountWords(meanShown(mean, s), unit) },
          { name: SKILLS.times, value: figure(String(count)) },
        ]}
      />
      {last?.weighing && <WeighedWith weighing={last.weighing} happened_at={last.happened_at} />}
    </Part>
  );
}

/** Where the scale of the last drill is in question, its mean is; the spread is the reader's. */
function WeighedWith(props: { weighing: Weighed; happened_at: string }) {
  const { happened_at } = props;
  const { instrument, mean, unit } = props.weighing;
  if (instrument === null) return null;
  const reading = { instrument, shown: mean, unit };
  return (
    <p>
      <BodyInQuestion body={{ reading }} happened_at={happened_at} />
    </p>
  );
}

function Improved({ skill }: { skill: SkillState }) {
  if (skill.drills.length < 2) return <p class="second">{SKILLS.improved_first}</p>;
  if (skill.improved.length === 0) return <p class="second">{SKILLS.improved_none}</p>;
  return (
    <>
      <ul class="improved">
        {skill.improved.map(({ what, sort, technique, before, now }) => (
          <li key={`${what} ${sort} ${technique}`}>
            <span>
              {sort !== undefined && `${SORT_WORDS[sort] ?? sort}: `}
              {SKILLS.improved_words(what)}
              {technique !== undefined && `: ${TECHNIQUE_WORDS[technique] ?? technique}`}
            </span>
            {before !== undefined && now !== undefined && (
              <b>{SKILLS.from_to(before, now, unitOf(what, skill))}</b>
            )}
          </li>
        ))}
      </ul>
      <p class="second">{SKILLS.improved_why}</p>
    </>
  );
}

/** Bias and spread are in divisions, which the sheet says once. */
function unitOf(what: string, { weighing }: SkillState): string {
  if (what === "repeatability") return weighing?.unit ?? "";
  return what === "within_half_percent" ? "%" : "";
}

function Beside({ skill, last }: { skill: SkillState; last: Drill }) {
  return (
    <>
      <OverTime drills={skill.drills} />
      <History
        subject={`skill:${skill.member}`}
        wordsOf={drillWords}
        correctAt={(row) => `#/skills/${skill.member}/correct/${row.id}`}
        kinds={DRILLS}
      />
      <LastReadings subject={`skill:${skill.member}`} drill={last} />
      {skill.notes.length > 0 && (
        <Part title={SKILLS.notes}>
          {skill.notes.map((note) => (
            <p key={note.entry} class="rec">
              {note.says}
            </p>
          ))}
        </Part>
      )}
    </>
  );
}
