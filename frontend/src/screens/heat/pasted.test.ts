import { expect, test } from "vitest";
import type { InstrumentShown } from "../common/batches.ts";
import { BLANK, type HeatTyped, heatBody, judgedSoFar, type Rows, rowsOf } from "./heat.ts";
import { momentOnWall, secondsOf } from "./heat_times.ts";
import { lacksAsked } from "./lacks.ts";
import { columnsIn, decoded, withColumns } from "./pasted.ts";
import { plotOf } from "./plot.ts";

const pasted = (text: string): HeatTyped => ({
  ...BLANK,
  how: "pasted",
  unit: "degC",
  by: "hot_hold",
  set_by: "the local code",
  text,
});

const rowsIn = (text: string) => {
  const { at_s, temperatures, unread } = rowsOf(pasted(text));
  return unread === null ? { at_s, temperatures } : unread.key;
};

test("rows written by hand have blanks between time and temperature", () => {
  expect(rowsIn("0 62.5\n10  60\n20 55,5")).toEqual({
    at_s: [0, 600, 1200],
    temperatures: ["62.5", "60", "55.5"],
  });
  expect(rowsIn("08:30 62,5 °C\n09:00 60 C\n")).toEqual({
    at_s: [0, 1800],
    temperatures: ["62.5", "60"],
  });
  expect(rowsIn("2026-11-10 08:30 62\n2026-11-10 08:31 -1.5")).toEqual({
    at_s: [0, 60],
    temperatures: ["62", "-1.5"],
  });
});

test("a heading above them stays one", () => {
  expect(withColumns("Minutes Temp\n0 62\n5 60")).toBe("Minutes\tTemp\n0\t62\n5\t60");
  expect(rowsIn("time temperature\n0 62\n5 60")).toEqual({
    at_s: [0, 300],
    temperatures: ["62", "60"],
  });
});

test("text with columns of its own is left as it is", () => {
  for (const text of ["0;62,5\n5;60", "0\t62\n5\t60", "0,62.5\n5,60", "hello you"]) {
    expect(withColumns(text)).toBe(text);
  }
  expect(rowsIn("0,62.5\n5,60")).toEqual({ at_s: [0, 300], temperatures: ["62.5", "60"] });
});

test("a line that is no row is said, never passed over", () => {
  expect(rowsIn("0 62\nfive sixty\n10 60")).toBe("no_columns");
  expect(rowsIn("0;62\n5;sixty\n10;60")).toBe("temperature");
  expect(rowsIn("nothing here")).toBe("no_columns");
});

test("the columns of a file are named by their heading and their first row", () => {
  expect(columnsIn("Serial;1\n\nNo.;Time;T1;T2\n1;08:00;60,5;4\n2;08:01;61;4")).toEqual([
    { place: 0, label: "No.", first: "1" },
    { place: 1, label: "Time", first: "08:00" },
    { place: 2, label: "T1", first: "60,5" },
    { place: 3, label: "T2", first: "4" },
  ]);
  expect(columnsIn("hello")).toEqual([]);
});

test("another column may be chosen where the file leaves it open", () => {
  const text = "min;core;air\n0;60;20\n5;61;21";
  const typed = { ...pasted(text), how: "file" };

  expect(rowsOf({ ...typed, text: "min;T1;T2\n0;60;20\n5;61;21" }).unread?.key).toBe(
    "which_column",
  );
  expect(rowsOf(typed).temperatures).toEqual(["60", "61"]);
  expect(rowsOf({ ...typed, temperature_column: "2" }).temperatures).toEqual(["20", "21"]);
  expect(rowsOf({ ...typed, time_unit: "s" }).at_s).toEqual([0, 5]);
});

test("a file is read in whichever letters its program wrote", () => {
  const utf16 = Uint8Array.from([0xff, 0xfe, 0x31, 0, 0xb0, 0]);

  expect(decoded(utf16)).toBe("1\u00b0");
  expect(decoded(new TextEncoder().encode("1\u00b0"))).toBe("1\u00b0");
  expect(decoded(Uint8Array.from([0x31, 0xb0]))).toBe("1\u00b0");
});

const PROBE: InstrumentShown = {
  id: "t1",
  name: "Probe",
  sort: "thermometer",
  unit: "degC",
  division: "0.1",
  capacity: null,
  repeatability: null,
  bowl_tare: null,
  place: null,
  is_here: true,
};
const ROWS_IN_F: Rows = {
  at_s: [0],
  temperatures: ["40"],
  unit: "degF",
  left_out: 0,
  read: null,
  unread: null,
};

test("pasted rows become a body that is judged, and a plot that keeps the worst of them", () => {
  const many = Array.from(
    { length: 3000 },
    (_, row) => `${row * 10};${row === 1777 ? "41.5" : "60"}`,
  );
  const typed = pasted(["Time [s];Core", ...many].join("\n"));
  const body = heatBody(typed, rowsOf(typed), { batch: "b1", step: "", thermometer: PROBE });
  const judged = judgedSoFar(body, null);

  expect(judged).toMatchObject({
    verdict: "fail",
    outside: { worst: "41.5", count: 1 },
    rows: { row_count: 3000, longest_gap_s: 10 },
  });
  const plot = body && judged && plotOf(body, judged);
  expect(plot?.points.length).toBeLessThan(1100);
  expect(Math.min(...(plot?.points ?? []).map(({ low }) => low))).toBe(41.5);
  expect(plot?.lines).toEqual([{ degrees: 57, words: "57\u00a0°C" }]);
});

test("the thermometer stands in a body with its step in the unit of the log", () => {
  const body = heatBody({ ...BLANK, how: "typed" }, ROWS_IN_F, {
    batch: "b1",
    step: "",
    thermometer: PROBE,
  });

  expect(body).toMatchObject({ instrument: "t1", division: "0.18", unit: "degF" });
  expect(judgedSoFar(body, null)?.trust).toMatchObject({ u: "0.0520" });
});

test("what is asked is asked whole, one sentence after another", () => {
  const said = (typed: Partial<HeatTyped>) =>
    lacksAsked({ ...BLANK, ...(typed as HeatTyped) })?.field ?? null; // as: only some fields here

  expect(said({})).toBe("by");
  expect(said({ by: "cold_hold" })).toBe("set_by");
  expect(said({ by: "lethality", set_by: "x", reference: "own", t_ref: "60" })).toBe("t_ref");
  expect(said({ by: "none" })).toBe("how");
  expect(said({ by: "none", how: "typed" })).toBe("unit");
  expect(said({ by: "none", how: "timer", unit: "degC", every_min: "0" })).toBe("every_min");
  expect(said({ by: "none", how: "file" })).toBe(null);
});

test("a wall clock is the moment it was, in summer and winter", () => {
  expect(momentOnWall("2026-07-01T08:00", "Europe/Dublin")).toBe("2026-07-01T07:00:00.000Z");
  expect(momentOnWall("2026-11-10T08:00:30", "Europe/Dublin")).toBe("2026-11-10T08:00:30.000Z");
  expect(momentOnWall("soon", "Europe/Dublin")).toBe(null);
  expect([secondsOf("12.5"), secondsOf("")]).toEqual([750, null]);
});
