/** What a batch cost: what is missing first, then where the money went, part by part. */
import type { CostAnswer, Line } from "../../calc/batch_costs.ts";
import type { BatchState } from "../../calc/batches.ts";
import { PACK_PLACES } from "../../calc/costs.ts";
import { divided, parseDecimal, written } from "../../calc/numbers.ts";
import { BalancePicture } from "../../parts/BalancePicture.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { type BudgetLines, NumberShown } from "../../parts/NumberShown.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import {
  lackingWords,
  MONEY,
  OVERHEAD_WORDS,
  PART_WORDS,
  packWord,
  ROW,
  SHARED,
} from "../../text/money.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { inCoins } from "../common/asked.ts";
import { batchOf, recipeNameOf } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { BatchInQuestion } from "../common/InQuestion.tsx";
import { amountText, materialOf, textField } from "../common/lots.ts";
import { costOf, lotName, money, nameOfLacking, seesCosts, workerName } from "./costs.ts";
import { Products } from "./Products.tsx";
import "../common/rows.css";
import "./money.css";

/** `#/cost/:batch`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.batch ?? "";
  const batch = batchOf(id)?.state ?? null;
  const title = batch === null ? MONEY.what_it_cost : recipeNameOf(batch);
  return (
    <Frame
      where={`${MONEY.what_it_cost}, ${batch?.code ?? ""}`}
      title={title}
      isRecorded={batch !== null}
      gauge={<HeadGauge />}
      benchName={MONEY.bench}
      bench={
        <Foot>
          <BackKey href={`#/batch/${id}`} />
          <Cup class="second-key" href={`#/cost/${id}/spent`}>
            {MONEY.spent}
          </Cup>
          <MainKey words={MONEY.work} href={`#/cost/${id}/work`} />
        </Foot>
      }
    >
      <Shown batch={batch} />
    </Frame>
  );
}

function Shown({ batch }: { batch: BatchState | null }) {
  if (batch === null) return <Notice>{MONEY.not_here}</Notice>;
  if (!seesCosts()) return <Notice>{MONEY.hidden}</Notice>;
  const cost = costOf(batch.batch);
  return (
    <>
      <BatchInQuestion batch={batch.batch} />
      <Incomplete cost={cost} />
      <Sums batch={batch} cost={cost} />
      <Products cost={cost} />
      <Lines cost={cost} />
    </>
  );
}

/** What is not known, with the way to where it can be written. */
function Incomplete({ cost }: { cost: CostAnswer }) {
  if (cost.missing.length === 0) return null;
  const lacksRate = cost.missing.some((each) => each.what === "rate");
  return (
    <Part title={MONEY.incomplete}>
      <p>{MONEY.incomplete_why}</p>
      <ul class="cost-lacks">
        {cost.missing.map((each) => (
          <li key={`${each.what} ${each.of} ${each.through}`}>
            <span>
              {lackingWords(
                each.what,
                nameOfLacking(each.what, each.of),
                each.through === null || each.through === each.of ? null : lotName(each.through),
              )}
            </span>
            {each.what === "value" && (
              <Cup href={`#/cost/${cost.batch}/products`}>{SHARED.add_value}</Cup>
            )}
            {each.what === "price" && <Cup href={`#/paid/${each.of}`}>{MONEY.add_price}</Cup>}
          </li>
        ))}
      </ul>
      {lacksRate && (
        <p class="key-row">
          <Cup href="#/set-up/rates">{MONEY.to_rates}</Cup>
        </p>
      )}
    </Part>
  );
}

function Sums({ batch, cost }: { batch: BatchState; cost: CostAnswer }) {
  const isWhole = cost.total !== null;
  const pack = packWord(cost.per, textField(materialOf(batch.product), "pack_word"));
  const good = cost.good === null ? null : amountWords(cost.good, cost.per);
  return (
    <Part title={MONEY.where_it_went}>
      {cost.lines.length === 0 ? <Notice>{MONEY.nothing_yet}</Notice> : <Picture cost={cost} />}
      <div class="cost-each">
        <span>{MONEY.each_good(pack)}</span>{" "}
        <NumberShown
          amount={inCoins(cost.per_good_pack)}
          unit={cost.currency}
          basis="computed"
          budget={workingOf(cost)}
        />
      </div>
      <Facts
        rows={[
          { name: isWhole ? MONEY.total : MONEY.known_so_far, value: money(cost.known) },
          { name: MONEY.good, value: good },
          { name: MONEY.per_filled(pack), value: money(cost.per_filled_pack) },
          ...(Number(cost.unpaid) > 0
            ? [
                { name: MONEY.unpaid, value: money(cost.unpaid) },
                { name: MONEY.per_paid(pack), value: money(cost.per_good_pack_paid) },
              ]
            : []),
        ]}
      />
      <p class="second">{MONEY.rule}</p>
      <p class="key-row">
        <Cup href={`#/cost/${batch.batch}/price`}>{MONEY.price}</Cup>
      </p>
    </Part>
  );
}

/** Whether the sum in coins, divided, gives the cost of one to its last digit. */
function isDivided(total: string, good: string, each: string): boolean {
  const [sum, count] = [parseDecimal(total), parseDecimal(good)];
  return written(divided(sum, count, PACK_PLACES)) === each;
}

/** How the cost of one was divided; the sum above it stands in whole coins, this one does not. */
function workingOf({ total, good, per, per_good_pack, currency }: CostAnswer) {
  if (total === null || good === null || per_good_pack === null) return undefined;
  const value = amountWords(per_good_pack, currency);
  const isOfCoins = isDivided(total, good, per_good_pack);
  const sum = isOfCoins ? figure(total) : MONEY.not_in_coins;
  const lines: BudgetLines = {
    value,
    inputs: [
      { name: MONEY.total, value: amountWords(total, currency) },
      { name: MONEY.good, value: amountWords(good, per) },
    ],
    formula: `${sum} / ${figure(good)} = ${figure(per_good_pack)}`,
  };
  return lines;
}

/** Streams as wide as they are dear: all of it from the left, its parts to the right. */
function Picture({ cost }: { cost: CostAnswer }) {
  const name = cost.total === null ? MONEY.known_so_far : MONEY.all_of_it;
  const parts = Object.entries(cost.parts).filter(([, sum]) => Number(sum) > 0);
  const says = parts.map(([part, sum]) => `${PART_WORDS[part]} ${money(sum)}`).join(", ");
  return (
    <BalancePicture
      says={`${name} ${money(cost.known)}: ${says}`}
      unit=""
      ins={[{ id: "all", name, amount: cost.known, sort: "recorded" }]}
      outs={parts.map(([part, sum]) => ({
        id: part,
        name: PART_WORDS[part] ?? part,
        amount: sum,
        sort: "recorded",
      }))}
    />
  );
}

function Lines({ cost }: { cost: CostAnswer }) {
  const parts = Object.keys(PART_WORDS).filter((part) =>
    cost.lines.some((line) => line.part === part),
  );
  return (
    <Part title={MONEY.part_by_part}>
      {parts.map((part) => (
        <section key={part} class="cost-part">
          <h3>
            <span>{PART_WORDS[part]}</span> <b>{money(cost.parts[part] ?? null)}</b>
          </h3>
          <ul>
            {cost.lines
              .filter((line) => line.part === part)
              .map((line) => (
                <li key={`${line.of} ${line.minutes} ${line.is_paid} ${line.entries.join(" ")}`}>
                  <span>
                    <span class={part === "overhead" ? "" : "rec"}>{lineName(line)}</span>
                    <span class="second">{lineWords(line)}</span>
                  </span>
                  <b>{money(line.cost)}</b>
                  <Rows batch={cost.batch} line={line} />
                </li>
              ))}
          </ul>
        </section>
      ))}
      {!parts.includes("labour") && <p class="second">{MONEY.no_work}</p>}
    </Part>
  );
}

/** Each entry behind a line can be corrected; a lot is corrected where it was weighed in. */
function Rows({ batch, line }: { batch: string; line: Line }) {
  if (line.entries.length === 0) return null;
  return (
    <p class="key-row">
      {line.entries.map((entry) => (
        <Cup key={entry} href={`#/cost/${batch}/row/${entry}`} name={ROW.correct(lineName(line))}>
          {ROW.word}
        </Cup>
      ))}
    </p>
  );
}

function lineName(line: Line): string {
  if (line.material !== null) return nameOf("material", line.material);
  if (line.part === "labour") return workerName(line.of);
  if (line.entries.length === 0) return OVERHEAD_WORDS[line.of] ?? line.of;
  return PART_WORDS[line.of] ?? line.of;
}

function lineWords(line: Line): string {
  if (line.minutes !== null) {
    return `${amountWords(line.minutes, "min")}${line.is_paid ? "" : `, ${MONEY.not_paid}`}`;
  }
  if (line.amount === null || line.unit === null) return "";
  return `${amountText(line.amount, line.unit, materialOf(line.material))}, ${line.of}`;
}
