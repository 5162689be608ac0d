import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { KindName } from "./kinds.ts";
import { corrects, effectiveKind, familySubjects, mentionsOf, subjectsOf } from "./links.ts";
import type { AnyBody } from "./upcast.ts";

interface LinkRow {
  why: string;
  kind: KindName;
  body: AnyBody;
  subjects: string[];
  mentions: string[];
}

interface FamilyRow {
  why: string;
  about: Record<string, string[]>;
  named: Record<string, string>;
  then: Record<string, string[]>;
}

const VECTORS: { links: LinkRow[]; families: FamilyRow[] } = JSON.parse(
  readFileSync(new URL("../../../tests/vectors/entries/links.json", import.meta.url), "utf8"),
);

describe("links", () => {
  it.each(VECTORS.links)("$why", ({ kind, body, subjects, mentions }) => {
    expect(subjectsOf(kind, body)).toEqual(subjects);
    expect(mentionsOf(kind, body)).toEqual(mentions);
  });

  it("a correction names its entry and is of that kind", () => {
    const body = { corrects: "e1", of_kind: "sale", reason: "twice" };

    expect(corrects("void", body)).toBe("e1");
    expect(effectiveKind("void", body)).toBe("sale");
    expect(corrects("sale", {})).toBeNull();
    expect(effectiveKind("sale", {})).toBe("sale");
  });
});

describe("a correction family", () => {
  it.each(VECTORS.families)("$why", ({ about, named, then }) => {
    const closed = familySubjects(new Map(Object.entries(about)), new Map(Object.entries(named)));

    expect(Object.fromEntries(closed)).toEqual(then);
  });
});
