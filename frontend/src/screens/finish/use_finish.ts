import { type BatchState, batchState } from "../../calc/batches.ts";
import type { Fact } from "../../calc/record.ts";
import { type HeldEntry, recordTogether } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { sheet } from "../../state/sheets.ts";
import { recipes } from "../../state/stock.ts";
import { nextCode } from "../common/codes.ts";
import { useDrafted } from "../common/drafted.ts";
import { today } from "../common/edge.ts";
import { materialOf } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { useFound } from "../common/use_found.ts";
import { useHeld } from "../common/use_held.ts";
import { BLANK_FINISH, type FinishAbout, lifeFrom, type Wanted, wantedEntries } from "./typed.ts";

const AFTER_ALL = Number.MAX_SAFE_INTEGER;

/** What is not saved yet, as facts after all others, so that the fold shows what it would give. */
function asFacts(wanted: readonly Wanted[], last: Fact): Fact[] {
  return wanted.map(({ kind, body }, index) => ({
    ...last,
    id: `typed-${index}`,
    kind,
    body,
    seq: null,
    device_seq: AFTER_ALL,
  }));
}

function factOf({ entry, seq }: HeldEntry): Fact {
  const { id, kind, author, device, device_seq, happened_at, local_date, body } = entry;
  return { id, kind, author, device, device_seq, happened_at, local_date, body, seq };
}

/** Where a batch's first output may take the batch's own code as its lot. */
function lotCodeFor(batch: BatchState): string | null {
  const own = batch.code;
  if (own !== null && sheet(`lot:${own}`).value === null) return own;
  return nextCode(materialOf(batch.product));
}

/** The unit of what is good: pieces where the product comes in packs, else as the batch is made. */
function outUnit(batch: BatchState, hasPacks: boolean): string {
  return hasPacks ? "pc" : (batch.makes?.unit ?? "g");
}

/** One batch's finishing. The balance is the batch's own fold with what is typed on top. */
export function useFinish(batch: BatchState) {
  const product = materialOf(batch.product);
  const packNet = product?.fields.pack_net;
  // A sheet of an older fold does not know the size yet.
  const own = batch.pack_net ? { ...batch.pack_net } : null;
  const net = own ?? (typeof packNet === "object" && packNet !== null ? { ...packNet } : null);
  const unit = outUnit(batch, net !== null || product?.fields.measured_by === "count");
  const recipe = recipes.value.find((each) => each.id === batch.recipe);
  const version = recipe?.versions.find((each) => each.entry === batch.recipe_version);
  const life = lifeFrom(version?.body.life ?? product?.fields.life, today());
  const form = `finish:${batch.batch}`;
  const { typed, type, clear } = useDrafted(form, BLANK_FINISH);
  const found = useFound(typed);
  const held = useHeld(`batch:${batch.batch}`, batch);
  const now = {
    ...typed.value,
    life_sort: typed.value.life_sort || (life?.sort ?? ""),
    life_on: typed.value.life_on || (life?.on ?? ""),
  };
  const lot = lotCodeFor(batch);
  const about: FinishAbout = {
    batch: batch.batch,
    lot: lot ?? "",
    material: batch.product ?? "",
    place: batch.place ?? "",
    unit,
    lossUnit: "g",
    packNet: net,
  };
  const wanted = wantedEntries(now, about);

  async function finish() {
    const end: Wanted = { key: "end", kind: "batch_finished", body: { batch: batch.batch } };
    found.value = hindrance(await recordTogether([...wanted, end], form));
    if (found.value !== null) return;
    tremble(1);
    clear();
    goTo(now.good === "" ? `/batch/${batch.batch}` : `/label/${about.lot}`);
  }

  return {
    typed: now,
    type,
    unit,
    packWord: typeof product?.fields.pack_word === "string" ? product.fields.pack_word : null,
    lot,
    hindrance: found,
    preview: previewOf(batch, held.value.map(factOf), wanted),
    finish,
  };
}

function previewOf(
  batch: BatchState,
  facts: readonly Fact[],
  wanted: readonly Wanted[],
): BatchState {
  const last = facts.at(-1);
  // Without every entry at hand the fold would know less than the sheet does.
  if (last === undefined || !facts.some((fact) => fact.kind === "batch_started")) return batch;
  return batchState(`batch:${batch.batch}`, [...facts, ...asFacts(wanted, last)]);
}

/** One finish screen's state. */
export type Finishing = ReturnType<typeof useFinish>;
