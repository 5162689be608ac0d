import { expect, test } from "vitest";
import { refusal } from "../../entries/refusals.ts";
import { hindranceOf } from "./form.ts";

test("a refused side of a change stands beside the field of the form", () => {
  const found = hindranceOf({
    refusal: refusal("letters.wrong", "changes.letters.to", { most: "3" }),
  });

  expect(found).toEqual({
    field: "letters",
    sentence: "Letters in lot codes is not a short name; write 1 to 3 capital letters, A to Z.",
  });
});

test("trouble of the phone belongs to no field", () => {
  expect(hindranceOf({ trouble: "trouble.storage_full" })?.field).toBe("");
});
