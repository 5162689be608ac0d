/** What is asked for a product: its history, and a price from a day on, at the stall or of a business. */
import type { AskedState } from "../../calc/asked_prices.ts";
import type { LotState } from "../../calc/stock.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { DayField, FieldGroup, NumberField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Facts, Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { sheet, sheetsOf } from "../../state/sheets.ts";
import type { Defined } from "../../state/stock.ts";
import { ASKED, PRICE, SPENT } from "../../text/money.ts";
import { amountWords, dayWords } from "../../text/numbers.ts";
import { useDrafted } from "../common/drafted.ts";
import { today } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { materialOf } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { currency, isCoordinator, money, typedMoney } from "./costs.ts";
import { askedBody } from "./typed.ts";

const EVERY = "every";

/** `#/asked/:material`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const product = materialOf(params.material ?? "");
  if (product !== null) return <Form key={product.id} product={product} />;
  return (
    <Instead
      where={ASKED.where}
      title={ASKED.title}
      benchName={ASKED.bench}
      back="#/set-up"
      says={ASKED.not_here}
    />
  );
}

interface Typed {
  [field: string]: string;
  price: string;
  for_whom: string;
  pack: string;
  since: string;
}

function Form({ product }: { product: Defined }) {
  const blank = { price: "", for_whom: "stall", pack: EVERY, since: today() };
  const form = useDrafted<Typed>(`asked/${product.id}`, blank);
  const found = useFound(form.typed);
  const isSaved = useFound<boolean>(form.typed);
  const typed = form.typed.value;
  const price = typedNumber(typed.price);
  const lacks = price === null ? ASKED.choose : currency() === null ? SPENT.no_currency : null;

  async function save() {
    const pack_net = sizesOf(product.id).get(typed.pack) ?? null;
    const said = { material: product.id, for_whom: typed.for_whom, pack_net, price: price ?? "" };
    const answer = await record("price_asked", askedBody(said, typed.since, currency()));
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    form.clear();
    isSaved.value = true;
  }
  return (
    <Frame
      where={ASKED.where}
      title={product.name}
      isRecorded
      gauge={<HeadGauge />}
      benchName={ASKED.bench}
      hasKeypad
      bench={
        <>
          <Keypad typed={typed.price} onTyped={(price) => form.type({ price })} />
          <Foot>
            <BackKey href={`#/set-up/materials/${product.id}`} />
            <MainKey
              words={ASKED.save(typedMoney(typed.price))}
              notReady={isCoordinator() ? lacks : PRICE.only_coordinators}
              onNotReady={() => focusFirst("price")}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      {isSaved.value && <Notice isLive>{ASKED.saved}</Notice>}
      <Refusal sentence={found.value?.sentence ?? null} />
      <div id="field-price">
        <NumberField
          label={ASKED.price}
          typed={typed.price}
          unit={currency()}
          isOpen
          onOpen={() => undefined}
        />
      </div>
      <For typed={typed} type={form.type} material={product.id} />
      <DayField label={ASKED.since} value={typed.since} onValue={(since) => form.type({ since })} />
      <History material={product.id} />
    </Frame>
  );
}

/** Who is asked, for which size of pack. */
function For(props: { typed: Typed; type: (part: Partial<Typed>) => void; material: string }) {
  const { typed, type } = props;
  const sizes = [...sizesOf(props.material).keys()];
  const options = [EVERY, ...sizes].map((value) => ({
    value,
    word: value === EVERY ? ASKED.every : value,
  }));
  return (
    <>
      <FieldGroup label={ASKED.for_whom}>
        <CupChoice
          name={ASKED.for_whom}
          options={ASKED.whom}
          chosen={typed.for_whom === "business" ? "business" : "stall"}
          onChoose={(for_whom) => type({ for_whom })}
        />
      </FieldGroup>
      {sizes.length > 0 && (
        <FieldGroup label={ASKED.pack}>
          <CupChoice
            name={ASKED.pack}
            options={options}
            chosen={typed.pack}
            onChoose={(pack) => type({ pack })}
          />
        </FieldGroup>
      )}
    </>
  );
}

/** Sizes of pack this phone knows lots of, by their words. */
function sizesOf(material: string) {
  const lots = sheetsOf<LotState>("lot").value.map(({ state }) => state);
  return new Map(
    lots
      .filter((lot) => lot.material === material)
      .flatMap(({ pack_net }) =>
        pack_net === null ? [] : [[amountWords(pack_net.amount, pack_net.unit), pack_net]],
      ),
  );
}

/** The youngest first. */
function History({ material }: { material: string }) {
  const prices = sheet<AskedState>(`asked:${material}`).value?.state.prices ?? [];
  return (
    <Part title={ASKED.history}>
      {prices.length === 0 && <p class="second">{ASKED.none}</p>}
      {ASKED.whom.map(({ value, word }) => {
        const own = prices.filter((each) => each.for_whom === value).reverse();
        if (own.length === 0) return null;
        return (
          <section key={value}>
            <h3>{word}</h3>
            <Facts
              rows={own.map(({ since, pack_net, price, currency: paidIn }) => ({
                name: ASKED.row(
                  dayWords(since, true),
                  pack_net === null ? ASKED.every : amountWords(pack_net.amount, pack_net.unit),
                ),
                value: money(price, paidIn),
              }))}
            />
          </section>
        );
      })}
    </Part>
  );
}
