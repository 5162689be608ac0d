import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { KindName } from "./kinds.ts";
import { effectiveKind, subjectsOf } from "./links.ts";
import type { AnyBody } from "./upcast.ts";

interface LinkRow {
  why: string;
  kind: KindName;
  body: AnyBody;
  subjects: string[];
}

const VECTORS: { links: LinkRow[] } = JSON.parse(
  readFileSync(new URL("../../../tests/vectors/entries/links.json", import.meta.url), "utf8"),
);

describe("links", () => {
  it.each(VECTORS.links)("$why", ({ kind, body, subjects }) => {
    expect(subjectsOf(kind, body)).toEqual(subjects);
  });

  it("a void is of the kind it names", () => {
    const body = { corrects: "e1", of_kind: "sale", reason: "twice" };

    expect(effectiveKind("void", body)).toBe("sale");
    expect(effectiveKind("sale", {})).toBe("sale");
  });
});
