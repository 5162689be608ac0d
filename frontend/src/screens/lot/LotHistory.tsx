/** Every entry about a lot; what a batch weighed in is corrected with the batch. */
import type { FillCheck } from "../../calc/fill_trust.ts";
import { History } from "../common/History.tsx";
import { lotWords } from "./history.ts";

const CORRECTED_HERE = [
  "receipt",
  "loss",
  "transfer",
  "dispatch",
  "sale",
  "return",
  "count",
  "fill_checked",
];

/** `code` is the lot's, `fills` are its fill checks. */
export function LotHistory({ code, fills }: { code: string; fills: readonly FillCheck[] }) {
  return (
    <History
      subject={`lot:${code}`}
      wordsOf={lotWords(code, fills)}
      correctAt={({ kind, id }) =>
        CORRECTED_HERE.includes(kind) ? `#/lot/${code}/correct/${id}` : null
      }
    />
  );
}
