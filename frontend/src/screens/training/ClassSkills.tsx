/** What the class says of each skill: bias, repeatability and person to person, drawn and in figures. */
import { TEXT_ORDER } from "../../calc/record.ts";
import type { ClassSkill, ClassWeighing, OneReader } from "../../calc/skill_class.ts";
import { Facts, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { amountWords, countWords, figure } from "../../text/numbers.ts";
import { CLASS, SORT_WORDS } from "../../text/skills.ts";
import { memberName } from "../common/people.ts";
import { Strip } from "./Strip.tsx";
import { classSays, meanShown, numberOf, signedFigure, spreadShown } from "./says.ts";

/** One part a skill; all rows of one are drawn to one scale. */
export function ClassSkills({ skills }: { skills: readonly ClassSkill[] }) {
  return (
    <>
      {skills.map((skill) => (
        <Part key={skill.sort} title={SORT_WORDS[skill.sort] ?? skill.sort}>
          <p class="what-is-so">{classSays(skill)}</p>
          <Together skill={skill} reach={reachOf(skill)} />
          <ul class="over-time class-skill" aria-label={CLASS.each}>
            {byName(skill.readers).map((each) => (
              <One key={each.member} reader={each} reach={reachOf(skill)} />
            ))}
          </ul>
        </Part>
      ))}
      {skills.length > 0 && <p class="second">{CLASS.how}</p>}
    </>
  );
}

function byName(readers: readonly OneReader[]): OneReader[] {
  return [...readers].sort((a, b) => TEXT_ORDER(memberName(a.member), memberName(b.member)));
}

/** How far from the truth the widest row reaches, in divisions. */
function reachOf({ bias, intermediate, readers }: ClassSkill): number {
  const ends = [...readers, { bias, spread: intermediate }].map(
    (each) => Math.abs(numberOf(each.bias)) + numberOf(each.spread),
  );
  return Math.max(...ends, 0.1);
}

function One({ reader, reach }: { reader: OneReader; reach: number }) {
  return (
    <li>
      <span class="rec">{memberName(reader.member)}</span>
      <Strip figures={reader} reach={reach} />
      <b>
        {signedFigure(meanShown(reader.bias, reader.spread))}
        {reader.spread !== null && <small> ± {figure(spreadShown(reader.spread))}</small>}
      </b>
    </li>
  );
}

/** The class as a whole: the drop is its bias, the whisker what the row names. */
function Together({ skill, reach }: { skill: ClassSkill; reach: number }) {
  const { bias, bias_u, repeatability, person_to_person, intermediate } = skill;
  const rows: [name: string, spread: string | null, words: string][] = [
    [CLASS.bias, bias_u, biasWords(skill)],
    [CLASS.repeatability, repeatability, figure(spreadShown(repeatability))],
    [CLASS.person_to_person, person_to_person, figure(spreadShown(person_to_person))],
    [CLASS.intermediate, intermediate, figure(spreadShown(intermediate))],
  ];
  return (
    <dl class="over-time class-skill together">
      {rows.map(([name, spread, words]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{spread !== null && <Strip figures={{ bias, spread }} reach={reach} />}</dd>
          <dd>
            <b>{spread === null && name !== CLASS.bias ? CLASS.too_few : words}</b>
          </dd>
        </div>
      ))}
    </dl>
  );
}

function biasWords({ bias, bias_u }: ClassSkill): string {
  const shown = signedFigure(meanShown(bias, bias_u));
  return bias_u === null ? shown : `${shown}, u ${figure(spreadShown(bias_u))}`;
}

/** Each weighed a thing of their own: only how well it repeats can be told. */
export function ClassWeighings({ weighings }: { weighings: readonly ClassWeighing[] }) {
  if (weighings.length === 0) return null;
  return (
    <Part title={CLASS.weighing}>
      <Facts
        rows={weighings.map((each) => ({
          name: `${nameOf("instrument", each.instrument)}, ${countWords(each.people, "person", "people")}`,
          value: `s ${amountWords(spreadShown(each.repeatability), each.unit)}`,
        }))}
      />
      <p class="second">{CLASS.weighing_why}</p>
    </Part>
  );
}
