/** What keeps a batch or lot back, said plainly wherever it is shown, with the way to its hold. */
import type { BatchState } from "../../calc/batches.ts";
import type { Hold } from "../../calc/holds.ts";
import type { LotState } from "../../calc/stock.ts";
import { Verdict } from "../../parts/Verdict.tsx";
import { HOLD } from "../../text/holds.ts";
import { dayWords } from "../../text/numbers.ts";
import { batchOf } from "./batches.ts";
import { dayOf } from "./edge.ts";

/** Nothing for what is not held. */
export function HeldPlate({ hold, href }: { hold: Hold | null | undefined; href: string }) {
  if (!hold?.is_held) return null;
  const day = hold.since === null ? "" : dayWords(dayOf(hold.since));
  return (
    <div class="held-plate">
      <Verdict
        verdict="held"
        word={`${HOLD.since} ${day}.`}
        why={hold.is_decided ? HOLD.decided : HOLD.waits}
      />
      <a class="cup" href={href}>
        {HOLD.see}
      </a>
    </div>
  );
}

/** The same for a batch. */
export function BatchHeld({ batch }: { batch: BatchState }) {
  return <HeldPlate hold={batch.hold} href={`#/batch/${batch.batch}/hold`} />;
}

/** The hold of a lot itself, and that of the batch it came out of. */
export function LotHeld({ lot }: { lot: LotState }) {
  const batch = lot.batch === null ? null : (batchOf(lot.batch)?.state ?? null);
  return (
    <>
      <HeldPlate hold={lot.hold} href={`#/lot/${lot.lot}/hold`} />
      {batch !== null && <BatchHeld batch={batch} />}
    </>
  );
}
