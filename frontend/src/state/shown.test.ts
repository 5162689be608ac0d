import { describe, expect, test } from "vitest";
import { AUTHOR, DEVICE, note, OTHER_DEVICE, START_MS } from "../../simulation/bench.ts";
import type { BatchState } from "../calc/batches.ts";
import type { InstrumentState } from "../calc/instruments.ts";
import { LOT_FOLD, type LotState } from "../calc/stock.ts";
import type { KindName } from "../entries/kinds.ts";
import { subjectsOf } from "../entries/links.ts";
import type { Body, EntryRow, SheetRow } from "../store/rows.ts";
import { folded, isUnderstood } from "./folding.ts";
import { shownOf } from "./shown.ts";
import "./judging.ts";

const LOT = "lot:MJ-261110-K7-1";
const CODE = "MJ-261110-K7-1";
let written = 0;

/** An entry as this phone holds it; `seq` null: an own one that waits. */
function row(kind: KindName, body: Body, seq: number | null): EntryRow {
  written += 1;
  const at = new Date(START_MS + written * 60_000).toISOString();
  const device = seq === null ? DEVICE : OTHER_DEVICE;
  const entry = {
    ...note({ kind, body, subjects: subjectsOf(kind, body), device, author: AUTHOR }),
    happened_at: at,
    device_seq: written,
    seen: "",
  };
  const corrects = typeof body.corrects === "string" ? { corrects: body.corrects } : {};
  return {
    id: entry.id,
    entry,
    seq,
    received_at: seq === null ? null : at,
    linked: [...entry.subjects],
    handed_over_ms: null,
    ...corrects,
  };
}

/** The same row with another envelope, as a later app would write it. */
function withEntry(made: EntryRow, changed: object): EntryRow {
  return { ...made, entry: Object.assign({}, made.entry, changed) };
}

function receipt(seq: number | null): EntryRow {
  const amount = { amount: "10", unit: "pc" };
  return row(
    "receipt",
    { lot: CODE, material: "jars", source: "glass", amount, place: "store", condition: "fit" },
    seq,
  );
}

function sale(count: string, seq: number | null): EntryRow {
  const amount = { amount: count, unit: "pc" };
  return row("sale", { lot: CODE, amount, place: "store", on: "2026-11-10" }, seq);
}

function fillCheck(gross: string, seq: number | null): EntryRow {
  const label = [{ amount: { amount: "250", unit: "g" } }];
  const weighed = { unit: "g", tares: ["20", "20"], gross: [gross, gross], lot_size: 2 };
  return row("fill_checked", { lot: CODE, on: "2026-11-10", label, rules: "us", ...weighed }, seq);
}

/** The sheet a server makes of rows, as of their highest number. */
function sheetOf(rows: readonly EntryRow[], changed: Partial<SheetRow> = {}): SheetRow {
  const upto_seq = Math.max(...rows.map((one) => one.seq ?? 0));
  return {
    subject: LOT,
    type: "lot",
    seq: upto_seq + 1,
    state: { ...folded(LOT, rows) },
    upto_seq,
    entry_count: rows.length,
    fold: LOT_FOLD,
    is_open: true,
    ...changed,
  };
}

function shown(rows: readonly EntryRow[], sheet: SheetRow | null) {
  const answered = shownOf({ subject: LOT, rows: [...rows], sheet }, DEVICE);
  if (answered === null) throw new Error("something is held");
  return { ...answered, state: answered.state as LotState };
}

describe("a lot on a phone", () => {
  test("made here and not handed over is folded here", () => {
    const answered = shown([receipt(null), sale("2", null)], null);

    expect(answered).toMatchObject({ from: "phone", waiting: 2, is_open: true });
    expect(answered.state.on_hand).toBe("8");
  });

  test("of which all is held is folded here, own entries among it", () => {
    const told = [receipt(1), sale("2", 2)];

    const answered = shown([...told, sale("3", null)], sheetOf(told));

    expect(answered).toMatchObject({ from: "phone", waiting: 1 });
    expect(answered.state.on_hand).toBe("5");
  });

  test("of which nothing is held is shown as the server added it up", () => {
    const answered = shown([], sheetOf([receipt(1), sale("2", 2)], { is_open: false }));

    expect(answered).toMatchObject({ from: "server", waiting: 0, is_open: false });
    expect(answered.state.on_hand).toBe("8");
  });

  test("is shown as the server added it up when this app counts differently", () => {
    const told = [receipt(1), sale("2", 2)];
    const sheet = sheetOf(told, { fold: LOT_FOLD + 1, state: { on_hand: "7" } });

    expect(shown(told, sheet)).toMatchObject({ from: "server", state: { on_hand: "7" } });
  });

  test("is not counted twice when own entries were confirmed before a restore", () => {
    const own = { ...sale("2", null), handed_over_ms: START_MS, seq: 0 };
    const sheet = sheetOf([receipt(1), sale("2", 2)], { is_open: false });

    expect(shown([own], sheet).state.on_hand).toBe("8");
  });
});

describe("what a newer app wrote about a lot", () => {
  const told = [receipt(1), sale("2", 2)];
  const tasted = withEntry(sale("1", 3), { kind: "tasting" });
  const sold = withEntry(sale("4", 3), { version: 2 });
  const corrected = withEntry(sale("5", 3), {
    kind: "correction",
    body: { corrects: "x", of_kind: "sale", of_version: 2, reason: "late", body: { sold: "4" } },
  });

  test.each([
    ["a kind nobody here knows", tasted],
    ["a known kind in a later form", sold],
    ["a correction of a later form", corrected],
  ])("%s is never read as if it were known, and said to need a newer app", (_, later) => {
    const sheet = sheetOf([...told, later], { state: { on_hand: "3", lot: CODE } });

    const answered = shown([...told, later], sheet);

    expect(answered).toMatchObject({ from: "server", is_newer: true, state: { on_hand: "3" } });
    expect(isUnderstood(later)).toBe(false);
  });

  test("stays away from own movements on top of what the server said", () => {
    const sheet = sheetOf(told);

    const answered = shown([...told, sold, sale("1", null)], sheet);

    expect(answered).toMatchObject({ is_newer: true, state: { on_hand: "7" } });
  });

  test("is not there for what this app knows", () => {
    expect(shown(told, sheetOf(told)).is_newer).toBe(false);
  });
});

describe("a lot of which the server knows more", () => {
  const told = [receipt(1), sale("2", 2)];
  const sheet = sheetOf(told);

  test("has own movements on the server's balances and sums", () => {
    const answered = shown([sale("3", null)], sheet);

    expect(answered).toMatchObject({ from: "server_and_own", waiting: 1 });
    expect(answered.state).toMatchObject({
      on_hand: "5",
      places: { store: "5" },
      made: "10",
      sold: "5",
      material: "jars",
    });
    expect(answered.state.went_to).toEqual([
      { to: "day:store:2026-11-10", amount: "5", on: "2026-11-10" },
    ]);
  });

  test("says on which day what was lost, here and there", () => {
    const lost = (count: string, seq: number | null) =>
      row(
        "loss",
        { lot: CODE, amount: { amount: count, unit: "pc" }, place: "store", reason: "breakage" },
        seq,
      );
    const known = sheetOf([...told, lost("1", 3)]);
    const { lost_on, ...older } = known.state;

    expect(shown([lost("2", null)], known).state.lost_on).toEqual([
      { on: "2026-11-10", amount: "3" },
    ]);
    // Made by an older app it does not say so.
    const answered = shown([lost("2", null)], { ...known, state: older, fold: LOT_FOLD - 1 });
    expect(lost_on).toEqual([{ on: "2026-11-10", amount: "1" }]);
    expect(answered.state).toMatchObject({
      lost: "3",
      lost_on: [{ on: "2026-11-10", amount: "2" }],
    });
  });

  test("has own fill checks after those the server knows", () => {
    const answered = shown(
      [fillCheck("260", null)],
      sheetOf([...told, fillCheck("270", 3)], { is_open: true }),
    );

    expect(answered.from).toBe("server_and_own");
    expect(answered.state.fills.map((fill) => fill.mean_error)).toEqual(["0", "-10"]);
    expect(answered.state.on_hand).toBe("8");
  });

  test("has its balance set by an own count", () => {
    const counted = row(
      "count",
      { lot: CODE, amount: { amount: "6", unit: "pc" }, place: "store" },
      null,
    );

    const { state } = shown([counted, sale("1", null)], sheet);

    expect(state.on_hand).toBe("5");
    expect(state.found).toBe("-2");
    expect(state.counts).toEqual([
      { entry: counted.id, place: "store", counted: "6", variance: "-2" },
    ]);
  });

  test("has an own correction of a held entry in place of what it corrects", () => {
    const sold = told[1];
    if (sold === undefined) throw new Error("two were told");
    const corrected = row(
      "correction",
      {
        corrects: sold.id,
        of_kind: "sale",
        reason: "counted wrong",
        body: { ...sold.entry.body, amount: { amount: "4", unit: "pc" } },
      },
      null,
    );

    const { state } = shown([sold, { ...corrected, linked: [LOT] }], sheet);

    expect(state).toMatchObject({ on_hand: "6", sold: "4" });
  });

  test("leaves out an own correction of an entry that is not held", () => {
    const body = { corrects: told[1]?.id ?? "", of_kind: "sale", reason: "slip" };
    const voided = { ...row("void", body, null), linked: [LOT] };

    expect(shown([voided], sheet)).toMatchObject({ waiting: 1, state: { on_hand: "8" } });
  });

  test("takes what it is from an own receipt that arrives after the first sale", () => {
    const sold = [sale("2", 2)];

    const { state } = shown([receipt(null)], sheetOf(sold));

    expect(state).toMatchObject({ material: "jars", made: "10", on_hand: "8" });
    expect(state.findings.map((finding) => finding.what)).not.toContain("no_maker");
  });
});

describe("a definition", () => {
  const PLACE = "place:kitchen-1";
  const state = {
    type: "place",
    id: "kitchen-1",
    fields: { name: "Hill kitchen", sort: "kitchen" },
    defined_by: "e1",
    changed_at: null,
    findings: [],
    notes: [],
  };
  const sheet: SheetRow = {
    subject: PLACE,
    type: "place",
    seq: 2,
    state,
    upto_seq: 1,
    entry_count: 1,
    fold: 1,
    is_open: false,
  };

  function renamed(from: string, to: string): object {
    const body = { place: "kitchen-1", changes: { name: { from, to } } };
    const rows = [row("place_changed", body, null)];
    return shownOf({ subject: PLACE, rows, sheet }, DEVICE)?.state ?? {};
  }

  test("takes an own change of what is in force", () => {
    expect(renamed("Hill kitchen", "Top kitchen")).toMatchObject({
      fields: { name: "Top kitchen", sort: "kitchen" },
      findings: [],
    });
  });

  test("keeps what is in force against a change of something else, and says so", () => {
    expect(renamed("Old kitchen", "Top kitchen")).toMatchObject({
      fields: { name: "Hill kitchen" },
      findings: [expect.objectContaining({ what: "conflict" })],
    });
  });
});

describe("an instrument", () => {
  const SCALE = "instrument:scale-1";
  const defined = row(
    "instrument_defined",
    {
      instrument: "scale-1",
      name: "Bench scale",
      sort: "scale",
      unit: "g",
      division: "1",
      capacity: "5000",
      accuracy_class: "III",
    },
    1,
  );

  /** Compared with 100 g and 500 g; `off` g too much. */
  function checked(off: number, seq: number | null, more: Body = {}): EntryRow {
    const steps = [100, 500].map((mass) => ({
      sort: "rising",
      reference: String(mass),
      readings: [String(mass + off)],
    }));
    return row("instrument_checked", { instrument: "scale-1", unit: "g", steps, ...more }, seq);
  }

  function sheetOfScale(rows: readonly EntryRow[]): SheetRow {
    const state = { ...folded(SCALE, rows) };
    return sheetOf(rows, { subject: SCALE, type: "instrument", state, fold: 2 });
  }

  function stateOf(rows: readonly EntryRow[], sheet: SheetRow): InstrumentState {
    return shownOf({ subject: SCALE, rows: [...rows], sheet }, DEVICE)?.state as InstrumentState;
  }

  /** Shown from the sheet and own entries alone, and as the server will add it up. */
  function bothWays(told: readonly EntryRow[], own: readonly EntryRow[]) {
    const onTop = stateOf(own, sheetOfScale(told));
    const server = folded(SCALE, [...told, ...own]) as InstrumentState;
    return { onTop, server };
  }

  test("of which all is held follows an own check at once", () => {
    const told = [defined, checked(0, 2)];

    const { corrections } = stateOf(
      [...told, checked(3, null, { line: "offset" })],
      sheetOfScale(told),
    );

    expect(corrections.at(-1)?.line).toMatchObject({ sort: "offset", is_significant: true });
  });

  test("has an own passed check end the doubts of a failed one on its sheet", () => {
    const { onTop, server } = bothWays([defined, checked(3, 2)], [checked(0, null)]);

    expect(onTop).toEqual(server);
    expect(onTop.doubts[0]?.until).not.toBeNull();
  });

  test("has an own failed check doubt everything since the pass on its sheet", () => {
    const { onTop, server } = bothWays([defined, checked(0, 2)], [checked(3, null)]);

    expect(onTop.doubts).toEqual(server.doubts);
    expect(onTop.findings.map((each) => each.what)).toEqual(["check_failed"]);
  });

  test("keeps its line through an own check that finds a spread only", () => {
    const repeats = ["100", "101", "100", "101", "100"];
    const steps = [{ sort: "repeats", readings: repeats }];
    const told = [defined, checked(3, 2, { line: "offset" })];

    const { onTop, server } = bothWays(told, [checked(0, null, { steps })]);

    expect(onTop).toEqual(server);
    expect(onTop.corrections.at(-1)).toMatchObject({ repeatability: "0.548" });
    expect(onTop.corrections.at(-1)?.line).not.toBeNull();
  });

  test("loses its line by an own adjustment", () => {
    const told = [defined, checked(3, 2, { line: "offset" })];

    const { onTop, server } = bothWays(told, [checked(0, null, { is_adjusted: true })]);

    expect(onTop).toEqual(server);
    expect(onTop.corrections.at(-1)?.line).toBeNull();
  });

  test("has an own check that happened earlier in its place", () => {
    const early = checked(3, null, { line: "offset" });

    const { onTop, server } = bothWays([defined, checked(0, 2)], [early]);

    expect(onTop).toEqual(server);
    expect(onTop.checks[0]?.entry).toBe(early.id);
  });

  test("has an own correction of a held check in place of what it corrects", () => {
    const failed = checked(3, 2);
    const body = { ...failed.entry.body, steps: checked(0, null).entry.body.steps };
    const corrects = {
      corrects: failed.id,
      of_kind: "instrument_checked",
      reason: "misread",
      body,
    };
    const corrected = { ...row("correction", corrects, null), linked: [SCALE] };

    const { doubts, checks } = stateOf([failed, corrected], sheetOfScale([defined, failed]));

    expect(doubts).toEqual([]);
    expect(checks.map((each) => [each.entry, each.verdict])).toEqual([[failed.id, "fit"]]);
  });

  test("corrects the readings of a batch that leans on it", () => {
    const check = checked(3, 2, { line: "offset" });
    const instrument = "scale-1";
    const reading = { instrument, unit: "g", shown: "503", division: "1" };
    const about = {
      batch: "b1",
      line: "sugar",
      material: "sugar",
      lot: "SU-1",
      place: "kitchen-1",
    };
    const weighed = row("weigh_in", { ...about, reading }, null);
    const beside = new Map([[SCALE, { ...folded(SCALE, [defined, check]) }]]);

    const shownBatch = shownOf(
      { subject: "batch:b1", rows: [weighed], sheet: null },
      DEVICE,
      beside,
    );

    const { lines } = (shownBatch?.state ?? {}) as BatchState;
    expect(lines[0]).toMatchObject({ in_base: "503", corrected: "500" });
  });
});
