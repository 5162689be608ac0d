/** The decision that is asked before a lot is used that is held, recalled or past its date. */

import { Caution } from "../../parts/Caution.tsx";
import { TextField } from "../../parts/Fields.tsx";
import { Verdict } from "../../parts/Verdict.tsx";
import { DESPITE } from "../../text/holds.ts";
import { againstSays } from "./against.ts";

interface DespiteProps {
  lots: readonly string[];
  reason: string;
  onReason: (reason: string) => void;
}

/** Nothing where nothing speaks against the lots. */
export function DespiteField({ lots, reason, onReason }: DespiteProps) {
  const says = againstSays(lots);
  if (says.length === 0) return null;
  return (
    <div id="field-despite">
      <Verdict verdict="held" word={says.join(" ")} why={DESPITE.hint} isLive />
      <TextField label={DESPITE.label} value={reason} onValue={onReason} lines={2} />
      <Caution about="despite" />
    </div>
  );
}
