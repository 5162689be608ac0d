/** The rows: typed, asked for by the timer, pasted, or read from a logger's file. */
import { useId } from "preact/hooks";
import { DayField, FieldGroup, NumberField, SelectField, TextField } from "../../parts/Fields.tsx";
import { Notice, Part } from "../../parts/Plain.tsx";
import { HEAT, unreadWords } from "../../text/heat.ts";
import { minutesText, shortMinutes } from "../../text/heat_results.ts";
import { amountWords } from "../../text/numbers.ts";
import { zone } from "../common/edge.ts";
import { beside } from "../common/sentences.ts";
import { UnitChoice } from "./AskedPage.tsx";
import { isRead } from "./heat.ts";
import { wallOf } from "./heat_times.ts";
import { columnsIn, withColumns } from "./pasted.ts";
import { RowList } from "./RowList.tsx";
import { Timer } from "./Timer.tsx";
import type { Heating } from "./use_heat.ts";

const LAST_MOST = 4; // of the rows kept; the drawing has all of them
const TEXT_CHARS_MAX = 600_000;

/** What belongs to the way the rows come; then when it began, then what was done. */
export function RowsPage({ heating }: { heating: Heating }) {
  const { typed, type } = heating;
  return (
    <Part title={HEAT.rows} id="field-rows">
      {typed.how === "timer" && <Timer typed={typed} />}
      {isRead(typed.how) ? <ReadRows heating={heating} /> : <KeptRows heating={heating} />}
      {typed.how !== "timer" && heating.rows.at_s.length > 0 && <Began heating={heating} />}
      {!isRead(typed.how) && <RowList heating={heating} />}
      {heating.isCorrection && (
        <div id="field-reason">
          <TextField
            label={HEAT.reason}
            value={typed.reason}
            onValue={(reason) => type({ reason })}
            lines={2}
          />
        </div>
      )}
      {heating.asksAction && (
        <div id="field-action">
          <TextField
            label={HEAT.actions}
            value={typed.action}
            onValue={(action) => type({ action })}
            lines={2}
          />
        </div>
      )}
    </Part>
  );
}

function KeptRows({ heating }: { heating: Heating }) {
  const { typed, open } = heating;
  const last = typed.at_s
    .map((at, row) => {
      const shown = amountWords(typed.temperatures[row], typed.unit);
      return HEAT.list(amountWords(shortMinutes(minutesText(at)), "min"), shown);
    })
    .slice(-LAST_MOST);
  const rows = typed.at_s.length;
  const words = rows > LAST_MOST ? `\u2026 ${last.join(", ")}` : last.join(", ");
  return (
    <>
      {typed.how === "typed" && (
        <NumberField
          label={HEAT.minutes}
          typed={typed.minutes}
          unit="min"
          isOpen={open.value === "minutes"}
          onOpen={() => {
            open.value = "minutes";
          }}
        />
      )}
      <NumberField
        label={`${HEAT.temperature}: ${rows}`}
        typed={typed.degrees}
        unit={typed.unit}
        isOpen={open.value === "degrees"}
        onOpen={() => {
          open.value = "degrees";
        }}
        hint={rows === 0 ? HEAT.none_yet : HEAT.last_rows(words)}
      />
    </>
  );
}

function ReadRows({ heating }: { heating: Heating }) {
  const { typed, type, rows } = heating;
  const isUnitOpen = rows.read !== null && rows.read.unit === null;
  return (
    <>
      {typed.how === "file" ? (
        <FileField heating={heating} />
      ) : (
        <TextField
          label={HEAT.paste}
          hint={HEAT.paste_hint}
          value={typed.text}
          onValue={(text) => type({ text })}
          lines={6}
          mostChars={TEXT_CHARS_MAX}
        />
      )}
      {heating.isReading && <Notice isLive>{HEAT.reading}</Notice>}
      {rows.unread !== null && (
        <p class="refusal" role="alert">
          {unreadWords(rows.unread)}
        </p>
      )}
      {isUnitOpen && <UnitChoice heating={heating} />}
      {typed.text.trim() !== "" && <Columns heating={heating} />}
    </>
  );
}

function FileField({ heating }: { heating: Heating }) {
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{HEAT.choose_file}</label>
      <input
        id={id}
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        aria-describedby={`${id}-hint`}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file !== undefined) void heating.read(file);
        }}
      />
      <p class="second" id={`${id}-hint`}>
        {HEAT.file_hint}
      </p>
      {heating.fileTrouble !== null && (
        <p class="refusal" role="alert">
          {heating.fileTrouble}
        </p>
      )}
    </div>
  );
}

/** Which columns were taken, and a choice where others are meant. */
function Columns({ heating }: { heating: Heating }) {
  const { typed, type, rows } = heating;
  const columns = columnsIn(typed.how === "pasted" ? withColumns(typed.text) : typed.text);
  if (columns.length < 2) return null;
  const options = columns.map(({ place, label, first }) => ({
    value: String(place),
    word: HEAT.column(place + 1, label, first),
  }));
  const guess = { value: "", word: HEAT.guess };
  const isGuessed = rows.read === null;
  const unit = rows.read?.time_unit ?? "";
  return (
    <FieldGroup label={HEAT.columns}>
      <SelectField
        label={HEAT.time_column}
        value={typed.time_column || String(rows.read?.time_column ?? "")}
        onValue={(time_column) => type({ time_column })}
        options={isGuessed ? [guess, ...options] : options}
      />
      <SelectField
        label={HEAT.heat_column}
        value={typed.temperature_column || String(rows.read?.temperature_column ?? "")}
        onValue={(temperature_column) => type({ temperature_column })}
        options={isGuessed ? [guess, ...options] : options}
      />
      {unit !== "" && unit !== "clock" && (
        <SelectField
          label={HEAT.time_unit}
          hint={rows.read?.is_time_unit_assumed ? HEAT.assumed : undefined}
          value={unit}
          onValue={(time_unit) => type({ time_unit })}
          options={Object.entries(HEAT.time_units).map(([value, word]) => ({ value, word }))}
        />
      )}
    </FieldGroup>
  );
}

function Began({ heating }: { heating: Heating }) {
  const { typed, type, began_at, rows, found } = heating;
  const wall = began_at === null ? null : wallOf(Date.parse(began_at), zone());
  const isSaid = rows.read?.begins != null;
  return (
    <div id="field-began_at">
      <FieldGroup
        label={HEAT.began}
        hint={isSaid ? undefined : HEAT.began_hint}
        refusal={beside(found.value, "began_at")}
      >
        <DayField
          label={HEAT.began_on}
          value={typed.began_on || (wall?.day ?? "")}
          onValue={(began_on) => type({ began_on })}
        />
        <DayField
          label={HEAT.began_clock}
          isClock
          value={typed.began_clock || (wall?.clock ?? "")}
          onValue={(began_clock) => type({ began_clock })}
        />
      </FieldGroup>
    </div>
  );
}
