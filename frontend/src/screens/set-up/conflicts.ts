/** Deciding a conflict: an ordinary change where the wanted value is taken, and the finding settled. */
import { objectIn } from "../../calc/bodies.ts";
import type { Finding } from "../../calc/record.ts";
import { record } from "../../state/record.ts";
import { CONFLICT } from "../../text/set_up.ts";
import { changesBetween, type Fields, jsonOf } from "./changes.ts";
import { type DefinedType, hindranceOf } from "./form.ts";

/** What is decided; `reason` "" takes the usual words. */
export interface Decision {
  type: DefinedType;
  id: string;
  inForce: Fields;
  finding: Finding;
  field: string;
  wanted: unknown;
  choice: "keep" | "take";
  reason: string;
}

/** The value a change entry wanted for a field; null where it wanted none. */
export function wantedIn(body: Fields, field: string): unknown {
  const changes = objectIn(body, "changes") ?? {};
  return objectIn(changes, field)?.to ?? null;
}

/** Writes what was decided; answers what stands in the way, or null. Pressing again is harmless. */
export async function decide(decision: Decision): Promise<string | null> {
  const { type, id, field, inForce, choice, finding } = decision;
  const isTaken = choice === "take";
  const usual = isTaken ? CONFLICT.taken_reason : CONFLICT.kept_reason;
  const reason = decision.reason === "" ? usual : decision.reason;
  const changes = isTaken
    ? changesBetween(inForce, { ...inForce, [field]: decision.wanted }, [field])
    : {};
  if (Object.keys(changes).length > 0) {
    const changed = await record(`${type}_changed`, {
      [type]: id,
      changes: jsonOf(changes),
      reason,
    });
    const trouble = hindranceOf(changed);
    if (trouble !== null) return trouble.sentence;
  }
  const settled = await record("finding_settled", {
    subject: `${type}:${id}`,
    finding: finding.key,
    decision: isTaken ? "put_right" : "accepted",
    reason,
  });
  return hindranceOf(settled)?.sentence ?? null;
}
