/** Two people changed one field and neither saw the other: both values, and a coordinator's choice. */
import { useSignal } from "@preact/signals";
import type { Finding } from "../../calc/record.ts";
import { Cup } from "../../parts/Cup.tsx";
import { TextField } from "../../parts/Fields.tsx";
import { Facts, Part, Refusal } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import type { Entry } from "../../state/types.ts";
import { CONFLICT, FIELDS } from "../../text/set_up.ts";
import { useHeld } from "../common/use_held.ts";
import type { Fields } from "./changes.ts";
import { decide, wantedIn } from "./conflicts.ts";
import type { DefinedType } from "./form.ts";
import { valueWords } from "./values.ts";
import { isCoordinator } from "./who.ts";

const REASON_CHARS_MAX = 600;

interface ConflictsProps {
  type: DefinedType;
  id: string;
  inForce: Fields;
  findings: readonly Finding[];
}

/** Nothing where nobody disagrees. */
export function Conflicts(props: ConflictsProps) {
  const open = props.findings.filter((each) => each.what === "conflict" && !each.is_settled);
  const subject = `${props.type}:${props.id}`;
  const held = useHeld(subject, open.length);
  if (open.length === 0) return null;
  return (
    <Part title={CONFLICT.title}>
      {open.map((each) => (
        <Conflict
          key={each.key}
          {...props}
          finding={each}
          entry={held.value.find(({ entry }) => entry.id === each.entry)?.entry ?? null}
        />
      ))}
    </Part>
  );
}

function Conflict(props: ConflictsProps & { finding: Finding; entry: Entry | null }) {
  const { finding, entry, inForce } = props;
  const reason = useSignal("");
  const trouble = useSignal<string | null>(null);
  const field = finding.field ?? "";
  const now = valueWords(field, inForce[field]);
  const wanted = entry === null ? null : wantedIn(entry.body, field);
  const words = entry === null ? (finding.detail?.wanted ?? "") : valueWords(field, wanted);
  const by = entry === null ? CONFLICT.somebody : nameOf("member", entry.author);

  async function choose(choice: "keep" | "take") {
    const why = reason.value.trim();
    trouble.value = await decide({ ...props, field, wanted, choice, reason: why });
  }
  return (
    <div class="conflict">
      <p class="second">{FIELDS[field] ?? field}</p>
      <Facts
        rows={[
          { name: CONFLICT.in_force, value: <span class="rec">{now}</span> },
          {
            name: CONFLICT.wanted(by, entry?.local_date ?? ""),
            value: <span class="rec">{words}</span>,
          },
        ]}
      />
      {field === "allergens" && <p class="second">{CONFLICT.allergens}</p>}
      <Refusal sentence={trouble.value} />
      {isCoordinator() ? (
        <>
          <TextField
            label={CONFLICT.why}
            value={reason.value}
            onValue={(typed) => {
              reason.value = typed;
            }}
            mostChars={REASON_CHARS_MAX}
          />
          <p class="cup-choice">
            <Cup onPress={() => void choose("keep")}>{CONFLICT.keep(now)}</Cup>
            {entry !== null && (
              <Cup onPress={() => void choose("take")}>{CONFLICT.take(words)}</Cup>
            )}
          </p>
        </>
      ) : (
        <p class="second">{CONFLICT.only}</p>
      )}
    </div>
  );
}
