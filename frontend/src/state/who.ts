/** Which devices of a phone a person may use, and how they are shown. */
import type { DeviceRow } from "../store/rows.ts";
import type { Current } from "./types.ts";

export function currentOf(row: DeviceRow): Current {
  const { device, mark, member, cooperative } = row;
  return { device, mark, member, cooperative };
}

/** A revoked device only hands over; one that is leaving is gone but for its cookie. */
export function isUsable(row: DeviceRow): boolean {
  return row.standing === "in" || row.standing === "over";
}
