import { describe, expect, it } from "vitest";
import { afterKey, typedNumber } from "./typing.ts";

const RULES = { mostChars: 6, isWhole: false, isSigned: false };

describe("typing on the keypad", () => {
  it("keeps the digits that were read, the last zero too", () => {
    const keys = ["1", "2", ".", "5", "0"];

    const typed = keys.reduce((text, key) => afterKey(text, key, RULES), "");

    expect(typed).toBe("12.50");
  });

  it("takes a comma for a point, once", () => {
    expect(afterKey("4", ",", RULES)).toBe("4.");
    expect(afterKey("4.2", ",", RULES)).toBe("4.2");
  });

  it("puts a nought before a point that comes first", () => {
    expect(afterKey("", ".", RULES)).toBe("0.");
  });

  it("replaces a leading nought by the next digit", () => {
    expect(afterKey("0", "7", RULES)).toBe("7");
  });

  it("rubs out one digit and rests when nothing is left", () => {
    expect(afterKey("12", "Backspace", RULES)).toBe("1");
    expect(afterKey("", "Backspace", RULES)).toBe("");
  });

  it("takes no more digits than asked for", () => {
    expect(afterKey("123456", "7", RULES)).toBe("123456");
  });

  it("takes no more places than an entry does", () => {
    const rules = { ...RULES, mostChars: 12 };

    expect(afterKey("0.123456", "7", rules)).toBe("0.123456");
    expect(afterKey("1234567", "8", rules)).toBe("12345678");
  });

  it("turns the sign only where a number may lie below zero", () => {
    expect(afterKey("18", "-", { ...RULES, isSigned: true })).toBe("-18");
    expect(afterKey("-18", "-", { ...RULES, isSigned: true })).toBe("18");
    expect(afterKey("18", "-", RULES)).toBe("18");
  });

  it("gives no number while only a sign or nothing is typed", () => {
    expect(typedNumber("")).toBeNull();
    expect(typedNumber("-")).toBeNull();
    expect(typedNumber("12.")).toBe("12");
    expect(typedNumber("0.50")).toBe("0.50");
  });
});
