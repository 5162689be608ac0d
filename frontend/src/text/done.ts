/** Words of what was worked out from a reading. */
export const DONE = {
  how: {
    corrected: "at 20 \u00b0C",
    cannot_correct: "cannot correct",
    salometer: "salt",
    titrated: "acid",
    weighed: "of what was weighed in",
  } as Readonly<Record<string, string>>,
};
