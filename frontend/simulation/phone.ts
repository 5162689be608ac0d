/** One simulated phone: its own databases, clock and chance; the app's own code on top of them. */
import { IDBFactory } from "fake-indexeddb";
import { TABLE_NUMBER } from "../src/entries/kinds.ts";
import { isKindName } from "../src/entries/links.ts";
import { enterBySignIn } from "../src/state/entering.ts";
import { leanedOnBy } from "../src/state/folding.ts";
import { shouldAsk } from "../src/state/held.ts";
import { type Made, make, makeCorrection, makeVoid } from "../src/state/making.ts";
import { shownOf } from "../src/state/shown.ts";
import "../src/state/judging.ts";
import { currentOf } from "../src/state/who.ts";
import { type DeviceDb, openDevice } from "../src/store/device.ts";
import { devicesOf, openPhone, type PhoneDb } from "../src/store/phone.ts";
import { attentionRows, heldAbout, heldSubjects, sheetRows, slips } from "../src/store/reads.ts";
import type { DeviceRow } from "../src/store/rows.ts";
import { takeInAbout } from "../src/sync/about.ts";
import { type ExchangeReport, exchangeAll } from "../src/sync/exchange.ts";
import { makeMaker } from "./maker.ts";
import { type SimulatedWorld, simulatedWorld, type Wire } from "./world.ts";

export interface SaveOrder {
  device: string;
  tab: number;
  kind: string;
  body: object;
  happened_at?: string;
}

export class SimulatedPhone {
  private readonly profile = new IDBFactory();
  private readonly tabs: Map<string, DeviceDb>[] = [new Map(), new Map()];
  private phoneDb: PhoneDb | null = null;
  private world: SimulatedWorld;
  private readonly wire: Wire;
  private readonly seed: number;
  clockOffMs = 0;

  constructor(seed: number, wire: Wire) {
    this.seed = seed;
    this.wire = wire;
    this.world = simulatedWorld(seed, wire, () => this.clockOffMs);
  }

  /** Everything in memory goes, as when the battery is empty; what was stored stays. */
  restart(): void {
    for (const tab of this.tabs) {
      for (const db of tab.values()) db.close();
      tab.clear();
    }
    this.phoneDb?.close();
    this.phoneDb = null;
    this.world.switchOff();
    this.world = simulatedWorld(
      this.seed + this.world.drawCount(),
      this.wire,
      () => this.clockOffMs,
    );
  }

  async signIn(login: string, passphrase: string): Promise<object> {
    const door = {
      world: this.world,
      phone: await this.phone(),
      open: (device: string) => this.open(device, 0),
      app_version: "simulated",
    };
    const entered = await enterBySignIn(door, login, passphrase);
    if (!("row" in entered)) return { code: entered.code };
    const { device, mark, member } = entered.row;
    return { device, mark, member };
  }

  async save(order: SaveOrder): Promise<object> {
    const { kind } = order;
    if (!isKindName(kind)) throw new Error(`no such kind: ${kind}`);
    return this.making(order, (maker) =>
      make(maker, kind, order.body, { happened_at: order.happened_at }),
    );
  }

  async correct(order: SaveOrder & { entry: string }): Promise<object> {
    return this.making(order, (maker) => makeCorrection(maker, order.entry, order.body, "misread"));
  }

  async takeBack(order: SaveOrder & { entry: string }): Promise<object> {
    return this.making(order, (maker) => makeVoid(maker, order.entry, "slip"));
  }

  /** One exchange, or one in each tab at once. Null: the phone was switched off meanwhile. */
  async exchange(shown: string | null, tabCount: number): Promise<object> {
    const phone = await this.phone();
    const world = this.world;
    const run = (tab: number): Promise<ExchangeReport | null> =>
      exchangeAll({
        world,
        phone,
        open: (device) => this.open(device, tab),
        kinds: TABLE_NUMBER,
        shown,
        pullForAll: true,
        withStuck: true,
      });
    const runs = Array.from({ length: tabCount }, (_, tab) => run(tab));
    const reports = await Promise.race([Promise.all(runs), world.switchedOff]);
    if (reports === "off") return { is_off: true };
    return {
      trouble: reports.map((report) => report?.trouble?.code ?? null),
      ran: reports.filter((report) => report !== null).length,
      touched: reports.flatMap((report) => [...(report?.touched.get(shown ?? "") ?? [])]),
    };
  }

  /** Everything a person could see, of every device of this phone. */
  async look(): Promise<object> {
    const seen: Record<string, object> = {};
    for (const row of await devicesOf(await this.phone())) {
      const db = await this.open(row.device, 0);
      const [waiting, aside] = await Promise.all([slips(db), attentionRows(db)]);
      seen[row.device] = {
        standing: row.standing,
        waiting: waiting.map((slip) => slip.id),
        attention: aside.map(({ id, status, code }) => ({ id, status, code })),
        sheets: await this.sheets(db, row),
      };
    }
    return seen;
  }

  /** Asks for what is held in part, as the app does whenever it folds such a subject. */
  async mend(): Promise<object> {
    for (const row of await devicesOf(await this.phone())) {
      if (row.standing !== "in") continue;
      const { device } = row;
      const db = await this.open(device, 0);
      for (const subject of await heldSubjects(db)) {
        const held = await heldAbout(db, subject);
        if (shouldAsk(held, device)) await takeInAbout({ world: this.world, db, device, subject });
      }
    }
    return {};
  }

  private async sheets(db: DeviceDb, row: DeviceRow): Promise<object> {
    const told = (await sheetRows(db)).map((sheet) => sheet.subject);
    const subjects = [...new Set([...told, ...(await heldSubjects(db))])].sort();
    const shown = await Promise.all(subjects.map((subject) => this.shown(db, subject, row)));
    return Object.fromEntries(shown.filter((one) => one !== null).map((one) => [one.subject, one]));
  }

  /** As the shelf does it: with the sheets beside it as this phone shows them. */
  private async shown(db: DeviceDb, subject: string, row: DeviceRow) {
    const held = await heldAbout(db, subject);
    const beside = new Map<string, object>();
    for (const other of leanedOnBy(held.rows)) {
      const state = shownOf(await heldAbout(db, other), row.device)?.state;
      if (state !== undefined) beside.set(other, state);
    }
    return shownOf(held, row.device, beside);
  }

  private async making(
    order: SaveOrder,
    work: (maker: ReturnType<typeof makeMaker>) => Promise<Made | null>,
  ): Promise<object> {
    const rows = await devicesOf(await this.phone());
    const row = rows.find((one) => one.device === order.device);
    if (row === undefined) throw new Error("nobody is signed in there");
    const db = await this.open(order.device, order.tab);
    const made = await work(makeMaker(db, currentOf(row), this.world));
    return made ?? { not_held: true };
  }

  private async phone(): Promise<PhoneDb> {
    if (this.phoneDb === null) {
      globalThis.indexedDB = this.profile;
      this.phoneDb = await openPhone();
    }
    return this.phoneDb;
  }

  private async open(device: string, tab: number): Promise<DeviceDb> {
    const known = this.tabs[tab]?.get(device);
    if (known !== undefined) return known;
    // The library takes the profile of the moment, so nothing may be awaited in between.
    globalThis.indexedDB = this.profile;
    const db = await openDevice(device);
    this.tabs[tab]?.set(device, db);
    return db;
  }
}
