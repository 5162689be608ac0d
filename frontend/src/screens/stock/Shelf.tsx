/** The shelf itself: what is below zero, what to use first, and a glass for each material. */
import type { Signal } from "@preact/signals";
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { LotTag } from "../../parts/LotTag.tsx";
import { Part } from "../../parts/Plain.tsx";
import { StoreGlass } from "../../parts/StoreGlass.tsx";
import { type LotInStock, nameOf } from "../../state/stock.ts";
import { againstWords, HOLD } from "../../text/holds.ts";
import { LOTS } from "../../text/lots.ts";
import { STOCK } from "../../text/stock.ts";
import { today } from "../common/edge.ts";
import { amountText, lifeShown, materialOf } from "../common/lots.ts";
import type { StockView } from "./StockScreen.tsx";
import { belowZero, byMaterial, type ShelfRow, toUseFirst } from "./shelf.ts";

const OPEN_TO = 2; // this few materials show their lots at once

/** `lots` are those found, in the order in which they should be used. */
export function Shelf({ view, lots }: { view: Signal<StockView>; lots: readonly LotInStock[] }) {
  const negative = belowZero(lots);
  const held = lots.filter((lot) => lot.held !== null && !lot.is_negative);
  const first = toUseFirst(lots, today()).filter((lot) => lot.held === null);
  const rows = byMaterial(lots, STOCK.unknown);
  return (
    <>
      {negative.length > 0 && (
        <Part title={STOCK.below_zero}>
          <p class="second">{STOCK.explain}</p>
          <Tags view={view} lots={negative} />
        </Part>
      )}
      {held.length > 0 && (
        <Part title={HOLD.where}>
          <p class="second">{HOLD.held_lot}</p>
          <Tags view={view} lots={held} />
        </Part>
      )}
      {first.length > 0 && (
        <Part title={STOCK.soonest}>
          <Tags view={view} lots={first} />
        </Part>
      )}
      <Part title={STOCK.by_material}>
        <div class="store-shelf">
          {rows.map((row) => (
            <MaterialRow
              key={`${row.material} ${row.unit}`}
              view={view}
              row={row}
              isOpen={rows.length <= OPEN_TO || view.value.material === row.material}
            />
          ))}
        </div>
      </Part>
      {lots.some((lot) => lot.life !== null) && <Caution about="shelf_life" />}
    </>
  );
}

function MaterialRow(props: { view: Signal<StockView>; row: ShelfRow; isOpen: boolean }) {
  const { view, row, isOpen } = props;
  const material = materialOf(row.material);
  const words = (amount: string) => amountText(amount, row.unit, material);
  return (
    <section class="shelf-row">
      <Cup
        class="shelf-cup"
        isOpen={isOpen}
        onPress={() => {
          view.value = { ...view.value, material: isOpen ? null : row.material };
        }}
      >
        <StoreGlass level={row.amount} whole={row.whole} says={null} height={66} />
        <span class="choice-name">
          <span class="rec">{row.name}</span>
          <span class="second">{STOCK.lots(row.lots.length)}</span>
        </span>
        <span class="choice-right">
          <b>{words(row.amount)}</b>
          <span class="unseen">, {STOCK.level(words(row.amount), words(row.whole))}</span>
        </span>
      </Cup>
      {isOpen && <Tags view={view} lots={row.lots} />}
    </section>
  );
}

function Tags({ view, lots }: { view: Signal<StockView>; lots: readonly LotInStock[] }) {
  return (
    <div class="tags">
      {lots.map((lot) => (
        <StockTag
          key={lot.lot}
          lot={lot}
          isChosen={view.value.lot === lot.lot}
          onPress={() => {
            view.value = { ...view.value, lot: lot.lot };
          }}
        />
      ))}
    </div>
  );
}

function StockTag(props: { lot: LotInStock; isChosen: boolean; onPress: () => void }) {
  const { lot } = props;
  const material = materialOf(lot.material);
  const life = lifeShown(lot.life, lot.made_on, today());
  return (
    <LotTag
      code={lot.lot}
      name={material?.name ?? STOCK.unknown}
      amount={lot.is_negative ? lacking(lot) : amountText(lot.amount, lot.unit, material)}
      life={lot.is_negative ? LOTS.below_zero : lot.held ? againstWords([lot.held]) : life.words}
      state={lot.is_negative ? "soon" : lot.held ? "held" : life.state}
      lifeLeft={life.left}
      isChosen={props.isChosen}
      onPress={props.onPress}
    />
  );
}

/** How far below zero, and where: the sum over all places would hide it. */
function lacking(lot: LotInStock): string {
  const below = Object.entries(lot.places).filter(([, amount]) => amount.startsWith("-"));
  return below
    .map(([place, amount]) =>
      STOCK.lacking(amountText(amount, lot.unit, materialOf(lot.material)), nameOf("place", place)),
    )
    .join(", ");
}
