/** The batch sheet: everything that was recorded and where it went; corrections start here. */
import type { BatchState } from "../../calc/batches.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { type NextAct, underWay } from "../../state/today.ts";
import { APP_TEXT } from "../../text/app.ts";
import { BATCH, findingWords } from "../../text/finish.ts";
import { heatVerdictInside, ruleWord } from "../../text/heat_rules.ts";
import { HOLD } from "../../text/holds.ts";
import { countWords } from "../../text/numbers.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { Balance } from "../common/Balance.tsx";
import {
  batchOf,
  lineName,
  pathOfAct,
  pathOfLeaned,
  recipeNameOf,
  targetOf,
} from "../common/batches.ts";
import { ChartKeyLater } from "../common/ChartKeyLater.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { BatchHeld } from "../common/HeldPlate.tsx";
import { Instead } from "../common/Instead.tsx";
import { later } from "../common/later.tsx";
import { materialOf, quantityText } from "../common/lots.ts";
import { useHeld } from "../common/use_held.ts";
import { Lines } from "../weigh-in/LineEntries.tsx";
import { Losses, Notes, Outputs, Steps, WeighIns } from "./BatchParts.tsx";
import "../weigh-in/weigh_in.css";
import "./batch.css";

const HeatLogs = later(
  async () => (await import("./HeatLogs.tsx")).HeatLogs,
  APP_TEXT.part_missing,
);

/** `#/batch/:batch`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const shown = batchOf(params.batch ?? "");
  if (shown === null) {
    return (
      <Instead
        where={BATCH.where}
        title={BATCH.batches}
        benchName={BATCH.bench}
        back="#/batches"
        on={{ words: BATCH.all_batches, href: "#/batches" }}
        says={BATCH.not_here}
      />
    );
  }
  return <Sheet shown={shown} />;
}

function Sheet({ shown }: { shown: NonNullable<ReturnType<typeof batchOf>> }) {
  const batch = shown.state;
  const held = useHeld(`batch:${batch.batch}`, batch);
  return (
    <Frame
      where={batch.code ?? BATCH.where}
      title={recipeNameOf(batch)}
      isRecorded
      gauge={<HeadGauge />}
      calm={
        <>
          {BATCH.version_by(batch.started_on ?? "")}{" "}
          <span class="rec">{nameOf("member", batch.author)}</span>
          {batch.makes && `, ${BATCH.makes(quantityText(batch.makes, materialOf(batch.product)))}`}
        </>
      }
      benchName={BATCH.bench}
      bench={<Bench batch={batch} />}
      side={
        <>
          <Part title={BATCH.balance}>
            <Balance batch={batch} />
            {batch.recipe !== null && <ChartKeyLater of={{ is: "yields", recipe: batch.recipe }} />}
            <p class="key-row">
              {targetOf(batch) !== null && (
                <Cup href={`#/sums/kettle/${batch.batch}`}>{BATCH.kettle}</Cup>
              )}
              <Cup href={`#/batch/${batch.batch}/sums`}>{BATCH.sums}</Cup>
              <Cup href={`#/cost/${batch.batch}`}>{BATCH.cost}</Cup>
            </p>
          </Part>
          {batch.hold?.is_held !== true && (
            <p class="key-row">
              <Cup href={`#/batch/${batch.batch}/hold`}>{HOLD.put}</Cup>
            </p>
          )}
          <p class="second batch-from">{from(shown.from)}</p>
        </>
      }
    >
      {shown.is_newer && <Notice>{APP_TEXT.needs_newer}</Notice>}
      <BatchHeld batch={batch} />
      <Findings batch={batch} />
      {batch.lines.some((line) => line.in_base === null) && (
        <Part title={BATCH.weigh}>
          <Lines batch={batch} here={null} />
        </Part>
      )}
      <WeighIns batch={batch} held={held.value} />
      <Steps batch={batch} held={held.value} />
      <HeatLogs batch={batch} held={held.value} />
      <Outputs batch={batch} held={held.value} />
      <Losses batch={batch} held={held.value} />
      <Notes batch={batch} />
    </Frame>
  );
}

function from(who: "phone" | "server" | "server_and_own"): string {
  if (who === "phone") return BATCH.from_phone;
  return who === "server" ? BATCH.from_server : BATCH.from_both;
}

function Findings({ batch }: { batch: BatchState }) {
  const unsettled = batch.findings.filter((each) => !each.is_settled);
  // What is wrong comes before what nobody can tell.
  const open = [
    ...unsettled.filter((each) => !isDoubt(each.what)),
    ...unsettled.filter((each) => isDoubt(each.what)),
  ];
  if (open.length === 0) return null;
  return (
    <Part title={BATCH.findings}>
      <ul class="findings">
        {open.map((each) => (
          <li key={each.key} class={isDoubt(each.what) ? "doubt" : ""}>
            <span class="rec">{aboutWords(batch, each.detail, each.entry)}</span>
            {findingWords(each.what)}
            {each.what === "instrument_failed" && <Failed batch={batch} finding={each} />}
          </li>
        ))}
      </ul>
    </Part>
  );
}

/** Which readings a failed check puts in question, and which verdicts would change. */
function Failed({
  batch,
  finding: { detail = {}, entry },
}: {
  batch: BatchState;
  finding: BatchState["findings"][number];
}) {
  const logged = (at: string) => batch.heat?.find((each) => each.entry === at);
  const verdictWord = (says: string) => heatVerdictInside(says) ?? WEIGH_IN.verdict_word(says);
  const named = (at: string) =>
    logged(at)
      ? ruleWord(logged(at)?.by ?? null)
      : aboutWords(
          batch,
          batch.steps.some((each) => each.step === at) ? { step: at } : { line: at },
        );
  const where = (detail.where ?? "").split(" ").map((at) => named(at).replace(/: $/, ""));
  const changes = (detail.would_change ?? "").split(" ").filter(Boolean);
  return (
    <>
      {" "}
      {BATCH.leans_on(countWords(Number(detail.readings ?? "0"), "reading"), where.join(", "))}{" "}
      {changes.length === 0
        ? BATCH.no_change
        : changes
            .map((each) => {
              const [at = "", was = "", now = ""] = each.split(":");
              const name = named(at).replace(/: $/, "");
              return BATCH.would_change(name, verdictWord(was), verdictWord(now));
            })
            .join(" ")}
      <p class="key-row">
        <Cup href={`#${pathOfLeaned(entry)}`}>{BATCH.see_leaned}</Cup>
      </p>
    </>
  );
}

function isDoubt(what: string): boolean {
  return what.endsWith("cannot_tell");
}

/** The line or step a finding is about, where it is about one. */
function aboutWords(
  batch: BatchState,
  about: Readonly<Record<string, string>> = {},
  entry?: string,
): string {
  const holds = (each: { entry: string }) => each.entry === entry;
  const line = batch.lines.find((each) => each.line === about.line || each.weigh_ins.some(holds));
  const step = batch.steps.find((each) => each.step === about.step || each.done.some(holds));
  const name = line === undefined ? (step?.says ?? "") : lineName(line);
  return name === "" ? "" : `${name.replace(/\.$/, "")}: `;
}

function nextWords(next: NextAct): string {
  if (next.act === "weigh_in") {
    return BATCH.next.weigh_in(nameOf("material", next.material ?? null).toLowerCase());
  }
  return BATCH.next[next.act];
}

function Bench({ batch }: { batch: BatchState }) {
  const next = underWay.value.find((each) => each.batch === batch.batch)?.next;
  const [output] = batch.outputs;
  const lot = output?.lot ?? null;
  return (
    <Foot>
      <BackKey href="#/batches" />
      {lot !== null && <Cup href={`#/trace/${lot}`}>{BATCH.trace}</Cup>}
      {next === undefined ? (
        <MainKey
          words={lot === null ? BATCH.all_batches : BATCH.label}
          href={lot === null ? "#/batches" : `#/label/${lot}`}
        />
      ) : (
        <MainKey words={nextWords(next)} href={`#${pathOfAct(next)}`} />
      )}
    </Foot>
  );
}
