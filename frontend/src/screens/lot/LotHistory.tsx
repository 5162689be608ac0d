/** Every entry about a lot; what a batch weighed in is corrected with the batch. */
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

/** `code` is the lot's. */
export function LotHistory({ code }: { code: string }) {
  return (
    <History
      subject={`lot:${code}`}
      wordsOf={lotWords(code)}
      correctAt={({ kind, id }) =>
        CORRECTED_HERE.includes(kind) ? `#/lot/${code}/correct/${id}` : null
      }
    />
  );
}
