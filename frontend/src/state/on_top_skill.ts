/** A member's practice of which the server knows more drills than this phone: own ones among them. */
import { type Drill, type SkillState, summedDrills } from "../calc/skills.ts";
import { type Beyond, foldedAs, mergedFindings, mergedNotes } from "./on_top_parts.ts";

/** Drills the server knows stay as they are, but for those an own entry corrects. */
export function skillOnTop(subject: string, state: SkillState, beyond: Beyond): object {
  const made = foldedAs<SkillState>(subject, [...beyond.covered, ...beyond.extra]);
  const again = new Set(beyond.covered.map((each) => each.id));
  const drills = [...state.drills.filter((drill) => !again.has(drill.entry)), ...made.drills];
  const ordered = drills.sort((a, b) => (drillOrder(a) < drillOrder(b) ? -1 : 1));
  return {
    ...state,
    drills: ordered,
    ...summedDrills(ordered),
    findings: mergedFindings(state.findings, made.findings, []),
    notes: mergedNotes(state.notes, made.notes),
  };
}

function drillOrder(drill: Drill): string {
  return `${drill.happened_at} ${drill.entry}`;
}
