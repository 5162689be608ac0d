/** Correct or void a drill: a slip of the thumb is no error of the eye. */
import { CorrectNumbers } from "../shared/CorrectNumbers.tsx";
import { memberName } from "../shared/people.ts";
import { drillNumbers } from "./drill_history.ts";

/** `#/skills/:member/correct/:entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { member = "", entry = "" } = params;
  return (
    <CorrectNumbers
      subject={`skill:${member}`}
      entry={entry}
      title={memberName(member)}
      back={`/skills/${member}`}
      numbersOf={drillNumbers}
    />
  );
}
