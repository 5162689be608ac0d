/** Which products of a batch carry its cost, and which are by-products with what value. */
import { useSignal } from "@preact/signals";
import type { ProductCost } from "../../calc/batch_costs.ts";
import type { CostState } from "../../calc/money.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Notice, Part, Refusal } from "../../parts/Plain.tsx";
import { record } from "../../state/record.ts";
import { sheet } from "../../state/sheets.ts";
import { MONEY, packWord, SHARED } from "../../text/money.ts";
import { batchOf } from "../common/batches.ts";
import { type Drafted, useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { materialOf, textField } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { costOf, currency, isCoordinator, lotName, seesCosts } from "./costs.ts";
import { hasValue, type SharedTyped, sharedBody, sharedMissing } from "./typed.ts";

/** `#/cost/:batch/products`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = params.batch ?? "";
  const products = seesCosts() ? costOf(batch).products : [];
  if (products.length > 0) return <Form key={batch} batch={batch} products={products} />;
  return (
    <Instead
      where={SHARED.where}
      title={SHARED.title}
      benchName={SHARED.bench}
      back={`#/cost/${batch}`}
      says={seesCosts() ? SHARED.nothing : MONEY.hidden}
    />
  );
}

/** What was said last, as it would be typed. */
function saidOf(batch: string, products: readonly ProductCost[]): SharedTyped {
  const said = sheet<CostState>(`cost:${batch}`).value?.state.shared ?? null;
  const typed: SharedTyped = { by: said?.by ?? "mass" };
  for (const { lot } of products) {
    const row = said?.products.find((each) => each.lot === lot);
    typed[`sort ${lot}`] = row?.sort ?? "main";
    typed[`value ${lot}`] = row?.value_each ?? "";
  }
  return typed;
}

function Form({ batch, products }: { batch: string; products: readonly ProductCost[] }) {
  const form = useDrafted<SharedTyped>(`cost/${batch}/products`, saidOf(batch, products));
  const found = useFound(form.typed);
  const open = useSignal(products.at(-1)?.lot ?? "");
  const isSaved = useFound<boolean>(form.typed);
  const lots = products.map((each) => each.lot);
  const lacks = sharedMissing(form.typed.value, lots, currency());

  async function save() {
    const body = sharedBody(form.typed.value, lots, { batch, currency: currency() });
    const answer = await record("cost_shared", body);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    form.clear(form.typed.value);
    isSaved.value = true;
  }
  return (
    <Frame
      where={`${SHARED.where}, ${batchOf(batch)?.state.code ?? ""}`}
      title={SHARED.title}
      gauge={<HeadGauge />}
      benchName={SHARED.bench}
      hasKeypad
      bench={
        <>
          <Keypad
            typed={form.typed.value[`value ${open.value}`] ?? ""}
            onTyped={(typed) => form.type({ [`value ${open.value}`]: typed })}
          />
          <Foot>
            <BackKey href={`#/cost/${batch}`} />
            <MainKey
              words={SHARED.save}
              notReady={isCoordinator() ? (lacks?.sentence ?? null) : SHARED.only_coordinators}
              onNotReady={() => focusFirst(lacks?.field)}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      {isSaved.value && <Notice isLive>{SHARED.saved}</Notice>}
      <Refusal sentence={found.value?.sentence ?? null} />
      <p class="second">{SHARED.why}</p>
      <Rows form={form} products={products} open={open.value} onOpen={(at) => (open.value = at)} />
    </Frame>
  );
}

interface RowsProps {
  form: Drafted<SharedTyped>;
  products: readonly ProductCost[];
  open: string;
  onOpen: (lot: string) => void;
}

function Rows({ form, products, open, onOpen }: RowsProps) {
  const typed = form.typed.value;
  const mainCount = products.filter(({ lot }) => typed[`sort ${lot}`] !== "by_product").length;
  return (
    <>
      {products.map((each) => (
        <Row
          key={each.lot}
          form={form}
          product={each}
          hasValue={hasValue(typed, each.lot, mainCount)}
          isOpen={open === each.lot}
          onOpen={() => onOpen(each.lot)}
        />
      ))}
      {mainCount > 1 && (
        <FieldGroup label={SHARED.by}>
          <CupChoice
            name={SHARED.by}
            options={SHARED.by_words}
            chosen={typed.by === "sales_value" ? "sales_value" : "mass"}
            onChoose={(by) => form.type({ by })}
          />
          <p class="second">{SHARED.ways[typed.by]}</p>
        </FieldGroup>
      )}
    </>
  );
}

function Row(props: {
  form: Drafted<SharedTyped>;
  product: ProductCost;
  hasValue: boolean;
  isOpen: boolean;
  onOpen: () => void;
}) {
  const { lot, material, per } = props.product;
  const typed = props.form.typed.value;
  const sort = typed[`sort ${lot}`] === "by_product" ? "by_product" : "main";
  const pack = packWord(per, textField(materialOf(material), "pack_word"));
  return (
    <Part title={lotName(lot)}>
      <CupChoice
        name={lotName(lot)}
        options={SHARED.sorts}
        chosen={sort}
        onChoose={(chosen) => {
          props.form.type({ [`sort ${lot}`]: chosen });
          props.onOpen();
        }}
      />
      {props.hasValue && (
        <div id={`field-${lot}`}>
          <NumberField
            label={sort === "by_product" ? SHARED.value(pack) : SHARED.sales_value(pack)}
            typed={typed[`value ${lot}`] ?? ""}
            unit={currency()}
            isOpen={props.isOpen}
            onOpen={props.onOpen}
          />
        </div>
      )}
    </Part>
  );
}
