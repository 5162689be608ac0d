/** What a join code says of itself; made by kitchenlog/members/marks.py. */

/** Whether it is for somebody who is a member already: the code says who, so nothing else is asked. */
export function isForMember(code: string): boolean {
  return /^[\s-]*[0-9]/.test(code);
}
