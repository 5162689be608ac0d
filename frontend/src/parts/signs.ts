/** The drawn signs: 24 x 24, half full, and the level is the same in all (y = 14). */

/** First path drawn as a line, second filled. */
type Sign = readonly [line: string, full: string];

const table = <Names extends string>(signs: Record<Names, Sign>): Record<Names, Sign> => signs;

export const SIGNS = table({
  today: [
    "M6.5 14a5.5 5.5 0 0 1 11 0M12 5V2.5M4.6 7.6 3 6M19.4 7.6 21 6",
    "M1.5 14h21v3.4h-3V22h-2.6v-4.6H7.1V22H4.5v-4.6h-3z",
  ],
  crate: ["M3 14V5h18v9M3 9.5h18M9 5v9M15 5v9", "M2 14h20v3H2zM2 18.6h20v3H2z"],
  cup: [
    "M1.8 3.5 4 6.5V14M16 3.5V14M2 3.5h14M4 10h4.5M16 6.5h3.6a2 2 0 0 1 2 2V14",
    "M3 13h14v5.5a3 3 0 0 1-3 3H6a3 3 0 0 1-3-3z",
  ],
  spoon: ["M14 13.5 22 4", "M1.5 13.5h13.5a6.75 6.75 0 0 1-13.5 0z"],
  pan: ["M3 3h18M12 3v4.5M5.2 14a6.8 6.8 0 0 1 13.6 0M12 14 9.2 10.2", "M4 14h16l1.5 7.5h-19z"],
  column: ["M8 14V2M16 14V2M8 5h3M8 8h2M8 11h3", "M7 13q5 3.2 10 0v6h3v2.5H4V19h3z"],
  stem: [
    "M9.8 14V4.2a2.2 2.2 0 0 1 4.4 0V14M17 5h3M17 8.5h2M17 12h3",
    "M8.8 14h6.4a5 5 0 1 1-6.4 0z",
  ],
  kettle: [
    "M4 14V9.5h16V14M8 6h8M12 6V3.5M4 11.5H1.5M20 11.5h2.5",
    "M3 14h18v3.5a4 4 0 0 1-4 4H7a4 4 0 0 1-4-4z",
  ],
  jar: [
    "M7.5 2.5h9v3.2h-9zM8 5.7C5.8 7.3 5 8.5 5 10.5V14M16 5.7c2.2 1.6 3 2.8 3 4.8V14",
    "M4 14h16v4.5a3 3 0 0 1-3 3H7a3 3 0 0 1-3-3z",
  ],
  tag: ["M3 14V9.5L8.5 3.5H21V14M8.6 9.2h.1", "M2 14h20v6.5H2z"],
  stall: [
    "M2.5 8.5Q4 2.5 12 2.5t9.5 6q-2.4 1.8-4.75 0-2.4 1.8-4.75 0-2.4 1.8-4.75 0-2.4 1.8-4.75 0zM12 9v5",
    "M1.5 13.5h21V17h-2.6l1.4 4.5h-2.5L17.4 17H6.6l-1.4 4.5H2.7L4.1 17H1.5z",
  ],
  trace: [
    "M2.5 2.5h6V7h-6zM15.5 2.5h6V7h-6zM5.5 7c0 4 6.5 3 6.5 7M18.5 7c0 4-6.5 3-6.5 7",
    "M5 14h14v4.5a3 3 0 0 1-3 3H8a3 3 0 0 1-3-3z",
  ],
  drop: [
    "M12 1.5c-2.3 3-3.3 4.7-3.3 6.2a3.3 3.3 0 0 0 6.6 0c0-1.5-1-3.2-3.3-6.2z",
    "M2 13q2.5 1.8 10 1.8T22 13v5.5a3 3 0 0 1-3 3H5a3 3 0 0 1-3-3z",
  ],
  ledger: ["M5 14V2.5h14V14M8.5 6.3h7M8.5 10h7", "M4 14h16v7.5H4z"],
  // A page's edge with its corner lifted: the step one came from lies under it.
  back: ["M10.5 6.5 3 14l7.5 7.5M3 14h18.5", ""],
  // A rubber lying on the level, its used end full.
  rubber: ["M11.5 14 17 4.5l5 3-3.8 6.5", "M3.5 14h15.2l-3.4 5.8H8.2L3 17zM2 21h20v1.6H2z"],
  // Two liquids of the same height: the same thing once more.
  again: ["M3 14V5M10 14V5M14 14V5M21 14V5", "M2 14h9v7.5H2zM13 14h9v7.5h-9z"],
  person: ["M8 9.5a4 4 0 1 1 8 0 4 4 0 0 1-8 0z", "M3 22c0-5 2.6-8 6-8h6c3.4 0 6 3 6 8z"],
  recipe: ["M4 14V3h13l3 3v8M8 7h5M8 10.5h8", "M3 14h18v7.5H3z"],
  lens: ["M5.2 14a7 7 0 1 1 13.6 0M17 18l5 4.5", "M4.5 13.5h15a7.6 7.6 0 0 1-15 0z"],
});

/** The name of a sign. */
export type SignName = keyof typeof SIGNS;
