/** Stock: what is there and how long, by material and lot; a lot is chosen and counted. */
import { type Signal, useSignal } from "@preact/signals";
import { useId } from "preact/hooks";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { isStillLoading } from "../../state/sheets.ts";
import { nameOf, places } from "../../state/stock.ts";
import { STOCK } from "../../text/stock.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Shelf } from "./Shelf.tsx";
import { lotsFound } from "./shelf.ts";
import "../common/rows.css";

/** What is looked for, and which lot the bench is about. */
export interface StockView {
  place: string | null;
  search: string;
  lot: string | null;
  material: string | null;
}

/** `params.place` shows one place at once. */
export function Screen({ params }: { params: Record<string, string> }) {
  const view = useSignal<StockView>({
    place: params.place ?? null,
    search: "",
    lot: null,
    material: null,
  });
  const { place, search } = view.value;
  const lots = lotsFound(place, search, STOCK.unknown);
  const isSearch = search.trim() !== "";
  return (
    <Frame
      where={STOCK.where}
      title={place === null ? STOCK.everywhere : nameOf("place", place)}
      isRecorded={place !== null}
      gauge={<HeadGauge />}
      calm={isStillLoading.value ? STOCK.loading : undefined}
      benchName={STOCK.bench}
      bench={<StockBench view={view} />}
    >
      {lots.length === 0 ? (
        <Notice isLive>
          {isSearch ? STOCK.none_found : place === null ? STOCK.none : STOCK.none_here}
        </Notice>
      ) : (
        <Shelf view={view} lots={lots} />
      )}
    </Frame>
  );
}

function StockBench({ view }: { view: Signal<StockView> }) {
  const isPlace = useSignal(false);
  const { lot, place } = view.value;
  if (isPlace.value) {
    return (
      <PlaceChoice
        place={place}
        onChoose={(chosen) => {
          view.value = { ...view.value, place: chosen, lot: null };
          isPlace.value = false;
        }}
      />
    );
  }
  return (
    <>
      <div class="search-row">
        <Search view={view} />
        <Cup
          onPress={() => {
            isPlace.value = true;
          }}
        >
          {STOCK.place}
        </Cup>
      </div>
      {lot !== null && (
        <div class="cup-choice">
          <Cup href={`#/lot/${lot}`}>{STOCK.sheet}</Cup>
          <Cup href={`#/lot/${lot}/move`}>{STOCK.move}</Cup>
          <Cup href={`#/lot/${lot}/loss`}>{STOCK.loss}</Cup>
          <Cup href={`#/lot/${lot}/top-up`}>{STOCK.top_up}</Cup>
        </div>
      )}
      <Foot>
        <BackKey href="#/" />
        <MainKey
          words={STOCK.count(lot ?? "")}
          href={`#/lot/${lot}/count`}
          notReady={lot === null ? STOCK.choose : null}
        />
      </Foot>
    </>
  );
}

function PlaceChoice(props: { place: string | null; onChoose: (place: string | null) => void }) {
  const all = { value: "", word: STOCK.everywhere };
  const known = places.value
    .filter((place) => !place.is_retired)
    .map(({ id, name }) => ({ value: id, word: name }));
  return (
    <>
      <p class="asks">{STOCK.place}</p>
      <CupChoice
        name={STOCK.place}
        options={[all, ...known]}
        chosen={props.place ?? ""}
        onChoose={(chosen) => props.onChoose(chosen === "" ? null : chosen)}
      />
    </>
  );
}

function Search({ view }: { view: Signal<StockView> }) {
  const id = useId();
  return (
    <p class="search">
      <label class="unseen" for={id}>
        {STOCK.search}
      </label>
      <input
        id={id}
        type="search"
        placeholder={STOCK.search}
        autocomplete="off"
        value={view.value.search}
        onInput={(event) => {
          view.value = { ...view.value, search: event.currentTarget.value };
        }}
      />
    </p>
  );
}
