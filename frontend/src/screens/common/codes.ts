/** Lot codes made on this phone, without asking anyone. */
import { lettersOf, lotCode, nextNumber } from "../../calc/codes.ts";
import { current } from "../../state/session.ts";
import { sheetsOf } from "../../state/sheets.ts";
import type { Defined } from "../../state/stock.ts";
import { today } from "./edge.ts";
import { textField } from "./lots.ts";

/** The code this phone gives next to a lot of this material; null while that is not known. */
export function nextCode(material: Defined | null): string | null {
  const mark = current.value?.mark;
  if (material === null || mark === undefined) return null;
  const letters = textField(material, "letters") ?? lettersOf(material.name);
  const stem = { on: today(), mark };
  const codes = sheetsOf<unknown>("lot").value.map(({ subject }) => subject.slice("lot:".length));
  return lotCode(letters, { ...stem, number: nextNumber(codes, letters, stem) });
}
