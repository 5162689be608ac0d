/** Taking a person to the first open thing: what a main key does that is not ready. */

/** Scrolls to the field standing in `#field-<name>` and gives it the focus. */
export function focusFirst(field: string | undefined): void {
  if (field === undefined) return;
  const place = document.getElementById(`field-${field}`);
  const target = place?.querySelector<HTMLElement>("input, textarea, select, button, a");
  place?.scrollIntoView({ block: "center" });
  target?.focus({ preventScroll: true });
}
