/** Sentences of the app around its screens. */

export const APP_TEXT = {
  loading: "Loading.",
  not_started: "The app could not start. Close other tabs of it, then load this page again.",
  part_missing: "This screen is not on this phone yet. Find signal, then load the page again.",
  blocked: "Close the other tabs of this app. An older one of them holds its memory.",
} as const;
