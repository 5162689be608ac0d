/** Counting, moving, writing off and pouring together one lot. */
import { useSignal } from "@preact/signals";
import type { LotState } from "../../calc/stock.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { sheet } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { amountWords } from "../../text/numbers.ts";
import { ACTS } from "../../text/stock.ts";
import { nextCode } from "../common/codes.ts";
import { useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { amountText, materialOf, placeSort } from "../common/lots.ts";
import { besideNone, hindrance } from "../common/sentences.ts";
import { baseUnitFor, unitsFor } from "../common/units.ts";
import { useFound } from "../common/use_found.ts";
import { ActFields, type ActOpen } from "./ActFields.tsx";
import { ActKeys } from "./ActKeys.tsx";
import { type Act, type ActTyped, actOf, BLANK, entryOf, missing, variance } from "./acts.ts";

const SHOWN = ["place", "to_place", "amount", "reason", "note", "from"];
const TITLES: Record<Act, string> = {
  count: ACTS.count,
  move: ACTS.move,
  loss: ACTS.loss,
  "top-up": ACTS.top_up,
};

/** `params.lot` and `params.act`; an unknown one is said, not guessed. */
export function Screen({ params }: { params: Record<string, string> }) {
  const lot = params.lot ?? "";
  const act = actOf(params.act) ?? "count";
  const state = sheet<LotState>(`lot:${lot}`).value?.state ?? null;
  if (state === null) {
    return (
      <Instead
        where={ACTS.where}
        title={lot}
        benchName={ACTS.bench}
        back="#/stock"
        says={ACTS.not_held}
      />
    );
  }
  return <ActForm key={`${lot} ${act}`} act={act} state={state} />;
}

/** What is proposed before anything is typed: where the lot stands, in its usual unit. */
function proposed(state: LotState): ActTyped {
  const [place = "", ...others] = Object.keys(state.places);
  const [unit = "pc"] = unitsFor(materialOf(state.material));
  return { ...BLANK, place: others.length === 0 ? place : "", unit };
}

function ActForm({ act, state }: { act: Act; state: LotState }) {
  const form = useDrafted<ActTyped>(`lot/${state.lot}/${act}`, proposed(state));
  const open = useSignal<ActOpen>(act === "top-up" ? null : "amount");
  const found = useFound(form.typed);
  const done = useSignal<string | null>(null);
  const typed = form.typed.value;
  const lacks = missing(act, typed, state.lot);
  const newLot = nextCode(materialOf(state.material)) ?? "";

  async function save() {
    const { kind, body } = entryOf(act, typed, aboutOf(state, typed, newLot));
    const words = doneWords(act, state, typed, newLot);
    const answer = await record(kind, body);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field.split(".")[0]);
    form.clear();
    done.value = words;
  }

  if (done.value !== null) return <Done lot={state.lot} act={act} words={done.value} />;
  return (
    <Frame
      where={`${TITLES[act]}, ${state.lot}`}
      title={materialOf(state.material)?.name ?? state.lot}
      isRecorded
      gauge={<HeadGauge />}
      benchName={ACTS.bench}
      hasKeypad
      bench={
        <>
          <ActKeys form={form} open={open} state={state} />
          <Foot>
            <BackKey href={`#/lot/${state.lot}`} />
            <MainKey
              words={keyWords(act, typed, newLot)}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => {
                if (lacks?.field === "amount") open.value = "amount";
                focusFirst(lacks?.field);
              }}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, SHOWN)} />
      <ActFields
        act={act}
        state={state}
        form={form}
        open={open}
        found={found.value}
        newLot={newLot}
      />
    </Frame>
  );
}

function aboutOf(state: LotState, typed: ActTyped, newLot: string) {
  const other = sheet<LotState>(`lot:${typed.other}`).value?.state;
  return {
    lot: state.lot,
    material: state.material,
    isStall: placeSort(typed.place) === "stall",
    newLot,
    lives: [state.life, other?.life ?? null],
  };
}

function typedAmount(typed: ActTyped): string {
  return amountWords(typedNumber(typed.amount), typed.unit);
}

function keyWords(act: Act, typed: ActTyped, newLot: string): string {
  if (act === "count") return ACTS.save_count;
  if (act === "move") return ACTS.save_move(typedAmount(typed));
  return act === "loss" ? ACTS.save_loss(typedAmount(typed)) : ACTS.save_top_up(newLot);
}

/** What is said afterwards; for a count what the record said before it. */
function doneWords(act: Act, state: LotState, typed: ActTyped, newLot: string): string {
  if (act === "move") {
    return ACTS.done_move(typedAmount(typed), nameOf("place", typed.to_place));
  }
  if (act === "loss") return ACTS.done_loss(typedAmount(typed));
  if (act === "top-up") return ACTS.done_top_up(newLot);
  const material = materialOf(state.material);
  const unit = state.unit ?? baseUnitFor(material);
  const expected = state.places[typed.place] ?? "0";
  const { is, by } = variance(typed, expected);
  const said = amountText(expected, unit, material);
  if (is === "same") return ACTS.counted_as_said(said);
  const off = amountText(by, unit, material);
  return is === "less" ? ACTS.counted_less(said, off) : ACTS.counted_more(said, off);
}

function Done({ lot, act, words }: { lot: string; act: Act; words: string }) {
  return (
    <Frame
      where={`${TITLES[act]}, ${lot}`}
      title={ACTS.kept}
      gauge={<HeadGauge />}
      benchName={ACTS.bench}
      bench={
        <Foot>
          <BackKey href="#/stock" />
          <MainKey words={ACTS.to_sheet} href={`#/lot/${lot}`} />
        </Foot>
      }
    >
      <Notice isLive>{words}</Notice>
    </Frame>
  );
}
