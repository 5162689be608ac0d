/** A code to be read out: four groups, the longer ones first. */

const GROUPS = 4; // as many as the field for it on the other phone

/** ACDEFGHJKM as ACD EFG HJ KM. */
export function groupsOf(code: string): string[] {
  const groups: string[] = [];
  let rest = code;
  for (let left = GROUPS; left > 0 && rest !== ""; left -= 1) {
    const size = Math.ceil(rest.length / left);
    groups.push(rest.slice(0, size));
    rest = rest.slice(size);
  }
  return groups;
}
