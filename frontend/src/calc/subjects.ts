/** A subject, `type:id`, taken apart. */

/** The part before the first colon; all of it where there is none. */
export function typeIn(subject: string): string {
  return subject.split(":", 1)[0] ?? "";
}

/** The part after the first colon, which may hold another: a day's does. */
export function idIn(subject: string): string {
  return subject.slice(typeIn(subject).length + 1);
}
