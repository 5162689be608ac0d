/** What to ask for a pack: markup and margin, never mixed up, whole coins, break-even, views. */
import { useSignal } from "@preact/signals";
import type { BatchState } from "../../calc/batches.ts";
import { Choices, CupChoice } from "../../parts/Choices.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Facts, Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { record } from "../../state/record.ts";
import { remember, remembered } from "../../state/settings.ts";
import { ASKED, MONEY, PRICE, packWord } from "../../text/money.ts";
import { askedPrice, packOf } from "../common/asked.ts";
import { batchOf } from "../common/batches.ts";
import { today } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { materialOf, textField } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import {
  costOf,
  currency,
  isCoordinator,
  lotName,
  money,
  percentWords,
  ratesInForce,
  seesCosts,
} from "./costs.ts";
import { EarnFields, type EarnNumber } from "./EarnFields.tsx";
import { type Asked, askedFrom, evenFor, type Priced, pricedOf, proposalFor } from "./proposal.ts";
import { askedBody } from "./typed.ts";
import { Views } from "./Views.tsx";
import "./money.css";

type Whom = "stall" | "business";

const NOTHING: Priced = {
  lot: null,
  pack_of: null,
  material: null,
  total: null,
  good: null,
  per: null,
  each: null,
};
const REMEMBERED = "money.proposal";
type Open = EarnNumber | "fixed";

/** `#/cost/:batch/price`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const id = params.batch ?? "";
  const batch = batchOf(id)?.state ?? null;
  if (batch !== null && seesCosts()) return <Price key={id} batch={batch} />;
  return (
    <Instead
      where={MONEY.price}
      title={PRICE.title}
      benchName={PRICE.bench}
      back={`#/batch/${id}`}
      says={batch === null ? MONEY.not_here : MONEY.hidden}
    />
  );
}

/** What is asked, for which product and whom, and what comes of it. */
function usePricing(batch: BatchState) {
  const rates = ratesInForce(batch.started_on ?? "");
  const asked = useSignal<Asked>(askedFrom(remembered(REMEMBERED), rates));
  const open = useSignal<Open>("percent");
  const said = useSignal<string | null>(null);
  const found = useSignal<string | null>(null);
  const lot = useSignal<string | null>(null);
  const choices = pricedOf(costOf(batch.batch));
  const priced = choices.find((each) => each.lot === lot.value) ?? choices[0] ?? NOTHING;
  const material = priced.material ?? batch.product;
  const product = materialOf(material);
  const whom = useSignal<Whom>("stall");
  const pack_net = packOf(priced.pack_of);
  const now = askedPrice(material, { for_whom: whom.value, pack_net });
  const answer = proposalFor(priced, asked.value);
  const price = "price" in answer ? answer.price : null;

  function ask(part: Partial<Asked>) {
    asked.value = { ...asked.value, ...part };
    said.value = null;
    remember(REMEMBERED, { ...asked.value, fixed: "" });
  }

  async function set() {
    if (price === null || material === null) return;
    const said_of = { material, for_whom: whom.value, pack_net, price };
    const kept = await record("price_asked", askedBody(said_of, today(), currency()));
    found.value = hindrance(kept)?.sentence ?? null;
    if ("saved" in kept) said.value = PRICE.set_done(money(price));
  }

  return {
    ...{ asked, open, said, found, lot, whom },
    ...{ choices, priced, material, product, now, answer, price, ask, set },
  };
}

function Price({ batch }: { batch: BatchState }) {
  const pricing = usePricing(batch);
  const { asked, open, said, found, lot, whom } = pricing;
  const { choices, priced, material, product, now, answer, price, ask, set } = pricing;
  return (
    <Frame
      where={`${MONEY.price}, ${batch.code ?? ""}`}
      title={product?.name ?? PRICE.title}
      isRecorded={product !== null}
      gauge={<HeadGauge />}
      benchName={PRICE.bench}
      hasKeypad
      bench={
        <>
          <Keypad
            typed={asked.value[open.value]}
            onTyped={(typed) => ask({ [open.value]: typed })}
          />
          <Foot>
            <BackKey href={`#/cost/${batch.batch}`} />
            <MainKey
              words={price === now && now !== null ? PRICE.is_price : PRICE.set(money(price))}
              notReady={notReady(answer, price === now)}
              onNotReady={() => undefined}
              onPress={() => void set()}
            />
          </Foot>
        </>
      }
    >
      {said.value !== null && <Notice isLive>{said.value}</Notice>}
      <Refusal sentence={found.value} />
      <Which
        choices={choices}
        chosen={priced.lot}
        onChoose={(chosen) => {
          lot.value = chosen;
        }}
      />
      <Proposed
        answer={answer}
        each={priced.each}
        pack={packWord(priced.per, textField(product, "pack_word"))}
        now={now}
      />
      <ForWhom
        chosen={whom.value}
        onChoose={(chosen) => {
          whom.value = chosen;
          said.value = null;
        }}
        material={material}
      />
      <EarnFields
        typed={asked.value}
        onTyped={ask}
        open={open.value}
        onOpen={(at) => {
          open.value = at;
        }}
      />
      <Even
        asked={asked.value}
        answer={answer}
        each={priced.each}
        isOpen={open.value === "fixed"}
        onOpen={() => (open.value = "fixed")}
      />
      <Views batch={batch} />
    </Frame>
  );
}

/** A stall and a business may be asked differently; all that was set is one tap away. */
function ForWhom(props: { chosen: Whom; onChoose: (whom: Whom) => void; material: string | null }) {
  return (
    <>
      <FieldGroup label={ASKED.for_whom}>
        <CupChoice
          name={ASKED.for_whom}
          options={ASKED.whom}
          chosen={props.chosen}
          onChoose={props.onChoose}
        />
      </FieldGroup>
      {props.material !== null && (
        <p class="key-row">
          <Cup href={`#/asked/${props.material}`}>{ASKED.title}</Cup>
        </p>
      )}
    </>
  );
}

/** Products that are not alike have a price each. */
function Which(props: {
  choices: readonly Priced[];
  chosen: string | null;
  onChoose: (lot: string) => void;
}) {
  if (props.choices.length < 2) return null;
  return (
    <Choices
      name={PRICE.which}
      items={props.choices.map(({ lot }) => ({ id: lot ?? "", name: lotName(lot ?? "") }))}
      chosen={props.chosen}
      onChoose={props.onChoose}
    />
  );
}

function notReady(answer: ReturnType<typeof proposalFor>, isSame: boolean): string | null {
  if ("why" in answer) return answer.why;
  if (!isCoordinator()) return PRICE.only_coordinators;
  return isSame ? PRICE.is_price : null;
}

/** The price to ask, and what is earned with it, said both ways. */
function Proposed(props: {
  answer: ReturnType<typeof proposalFor>;
  each: string | null;
  pack: string;
  now: string | null;
}) {
  const { answer, each, pack, now } = props;
  if ("why" in answer) return <Notice>{answer.why}</Notice>;
  return (
    <>
      <p class="cost-each">
        <span>{PRICE.proposed}</span> <b class="ruled computed">{money(answer.price)}</b>
      </p>
      <Facts
        rows={[
          { name: PRICE.cost_each(pack), value: money(each) },
          { name: PRICE.exact, value: money(answer.exact) },
          { name: PRICE.markup, value: percentWords(answer.markup_percent) },
          { name: PRICE.margin, value: percentWords(answer.margin_percent) },
          { name: PRICE.earned, value: money(answer.earned) },
          ...(Number(answer.commission) > 0
            ? [{ name: PRICE.stall_keeps, value: money(answer.commission) }]
            : []),
          { name: PRICE.now, value: money(now) },
        ]}
      />
    </>
  );
}

/** How many packs carry a fixed cost, at the proposed price. */
function Even(props: {
  asked: Asked;
  answer: ReturnType<typeof proposalFor>;
  each: string | null;
  isOpen: boolean;
  onOpen: () => void;
}) {
  const says = evenFor(props.asked.fixed, props.answer, props.each);
  return (
    <Part title={PRICE.even}>
      <NumberField
        label={PRICE.fixed}
        hint={PRICE.same_period}
        typed={props.asked.fixed}
        unit={currency()}
        isOpen={props.isOpen}
        onOpen={props.onOpen}
      />
      {says !== null && <p role="status">{says}</p>}
    </Part>
  );
}
