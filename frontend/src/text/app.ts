/** Sentences of the app around its screens. */

export const APP_TEXT = {
  loading: "Loading.",
  not_started: "The app could not start. Close other tabs of it, then load this page again.",
  part_missing: "This screen is not on this phone yet. Find signal, then load the page again.",
  needs_newer:
    "A newer app wrote something about this. It is kept here and handed over, but needs the newer app to be read: update this one.",
  blocked: "Close the other tabs of this app. An older one of them holds its memory.",
} as const;
