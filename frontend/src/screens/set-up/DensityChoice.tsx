/** The density of a material: proposed by its name from the published table, with spread and source. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { Choices } from "../../parts/Choices.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { FieldGroup } from "../../parts/Fields.tsx";
import { NumberShown } from "../../parts/NumberShown.tsx";
import { Facts } from "../../parts/Plain.tsx";
import { amountWords, figure } from "../../text/numbers.ts";
import { DENSITY } from "../../text/set_up.ts";
import {
  calledAlike,
  type DensityFound,
  type DensityTable,
  densityKeys,
  densityOf,
  densityShown,
  densityTable,
  readDensities,
} from "../common/density.ts";
import { beside } from "../common/sentences.ts";
import { type FormAtWork, textAt } from "./form.ts";

const PROPOSED_MAX = 4;

/** Nothing of the table is read before this stands on a screen. */
export function DensityChoice({ form }: { form: FormAtWork }) {
  useEffect(() => void readDensities(), []);
  const table = densityTable.value;
  const chosen = table === null ? null : densityOf(textAt(form.typed, "density_of"), table);
  const put = (density_of: string) => form.type({ density_of });
  if (!form.canWrite && textAt(form.typed, "density_of") === "") return null;
  return (
    <div id="field-density_of">
      <FieldGroup
        label={DENSITY.title}
        hint={DENSITY.why}
        refusal={beside(form.found, "density_of")}
      >
        {table === null && <p class="second">{DENSITY.loading}</p>}
        {chosen !== null && <DensityFacts found={chosen} />}
        {chosen !== null && form.canWrite && (
          <p class="key-row">
            <Cup onPress={() => put("")}>{DENSITY.take_away}</Cup>
          </p>
        )}
        {table !== null && chosen === null && form.canWrite && (
          <Proposed table={table} name={textAt(form.typed, "name")} onChoose={put} />
        )}
      </FieldGroup>
    </div>
  );
}

function Proposed(props: { table: DensityTable; name: string; onChoose: (key: string) => void }) {
  const isAll = useSignal(false);
  const { table } = props;
  const alike = calledAlike(props.name, table, PROPOSED_MAX);
  const keys = isAll.value ? densityKeys(table) : alike;
  return (
    <>
      <Choices
        name={isAll.value ? DENSITY.all : DENSITY.proposed}
        items={keys.map((key) => ({
          id: key,
          name: key,
          isRecorded: false,
          ...rangeOf(key, table),
        }))}
        chosen={null}
        onChoose={props.onChoose}
        none={DENSITY.none_alike}
      />
      {!isAll.value && (
        <p class="key-row">
          <Cup
            onPress={() => {
              isAll.value = true;
            }}
          >
            {DENSITY.search}
          </Cup>
        </p>
      )}
    </>
  );
}

function rangeOf(key: string, table: DensityTable): { right?: string } {
  const found = densityOf(key, table);
  return found === null ? {} : { right: amountWords(densityShown(found).value, "g/mL") };
}

/** Value as a figure from a book, its spread, what was weighed, who published it. */
function DensityFacts({ found }: { found: DensityFound }) {
  const { row } = found;
  const { value, low, high } = densityShown(found);
  const spread =
    low === null || high === null ? DENSITY.one_figure : DENSITY.range(figure(low), high);
  return (
    <>
      <p>
        <b>{found.key}</b>
      </p>
      <Facts
        rows={[
          {
            name: DENSITY.value,
            value: <NumberShown amount={value} unit="g" basis="booked" />,
          },
          { name: DENSITY.spread, value: spread },
          { name: DENSITY.portion, value: `${row.portion}: ${amountWords(row.mass_g, "g")}` },
        ]}
      />
      <p class="second">
        {DENSITY.source} {row.source} ({DENSITY.basis[row.basis] ?? row.basis})
      </p>
    </>
  );
}
