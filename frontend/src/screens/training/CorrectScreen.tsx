/** Correct or void a drill: a slip of the thumb is no error of the eye. */
import { SKILLS } from "../../text/skills.ts";
import { CorrectNumbers } from "../common/CorrectNumbers.tsx";
import { memberName } from "../common/people.ts";
import { drillNumbers } from "./drill_history.ts";

/** `#/skills/:member/correct/:entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { member = "", entry = "" } = params;
  return (
    <CorrectNumbers
      subject={`skill:${member}`}
      entry={entry}
      title={memberName(member) || SKILLS.where}
      back={`/skills/${member}`}
      numbersOf={drillNumbers}
    />
  );
}
