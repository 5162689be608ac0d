/**
 * How the calculations about readers are called with what a vector gives; the twin of
 * tests/calc/registry_skills.py, where the short forms of a vector are told.
 */

import type { Body } from "./bodies.ts";
import { drillQuestions } from "./drills.ts";
import { classFigures } from "./skill_class.ts";
import { improvedBetween } from "./skill_steps.ts";
import * as skills from "./skills.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import { factOf } from "./vectors_registry_folds.ts";

/** The sheet of a member whose drills are those, one a day in June 2026. */
function foldedDrills(member: string, bodies: readonly Body[]): skills.SkillState {
  const facts = bodies.map((body, index) =>
    factOf({
      id: `d${index + 1}`,
      kind: "drill_done",
      happened_at: `2026-06-${String(index + 1).padStart(2, "0")}T08:00:00.000Z`,
      body: { ...body, member },
    }),
  );
  return skills.skillState(`skill:${member}`, facts);
}

function improvedJson(g: Given) {
  const [before, now] = foldedDrills("ana", [g.before, g.now]).drills;
  if (before === undefined || now === undefined) throw new Error("two drills were given");
  return improvedBetween(before, now);
}

function skillState(g: Given) {
  const state = skills.skillState(g.subject, g.facts.map(factOf));
  const parts = Object.entries(state).filter(([name]) => !g.show || g.show.includes(name));
  return Object.fromEntries(parts);
}

function classJson(g: Given) {
  const members: [string, Body[]][] = Object.entries(g.members);
  const made = classFigures(members.map(([member, bodies]) => foldedDrills(member, bodies)));
  const parts = Object.entries(made).filter(([name]) => !g.show || g.show.includes(name));
  return Object.fromEntries(parts);
}

export const SKILLS: Adapters = {
  skills: {
    skill_state: skillState,
    score_of: (g) => skills.scoreOf(g.question),
    reader_figures: (g) => skills.readerFigures(g.questions.map(skills.scoreOf)),
    summed_drills: (g) => skills.summedDrills(foldedDrills("ana", g.drills).drills),
  },
  skill_class: { class_figures: classJson },
  drills: { drill_questions: (g) => drillQuestions(g.seed, g.drawn_by) },
  skill_steps: { improved_between: improvedJson },
};
