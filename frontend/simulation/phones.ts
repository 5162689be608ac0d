/**
 * The phones of the simulation in one process, driven by JSON lines.
 *
 * In: `{"id", "phone", "do", ...}` and, for each request a phone makes, `{"wire", "answer"}`.
 * Out: `{"id", "done"}` or `{"id", "failed"}`, and `{"wire", "phone", "request"}`.
 */
import "fake-indexeddb/auto";
import { createInterface } from "node:readline";
import type { WireAnswer, WireRequest } from "../src/sync/world.ts";
import { type SaveOrder, SimulatedPhone } from "./phone.ts";
import { startClock } from "./world.ts";

interface Order {
  id: number;
  phone: string;
  do: string;
  seed: number;
  login: string;
  passphrase: string;
  off_ms: number;
  shown: string | null;
  tabs: number;
  entry: string;
  saves: SaveOrder[];
}
type Line = Order | { wire: number; answer: WireAnswer | "off" | "lost" };

const phones = new Map<string, SimulatedPhone>();
const asked = new Map<number, (answer: WireAnswer | "off" | "lost") => void>();
let wireCount = 0;

createInterface({ input: process.stdin }).on("line", (text) => {
  const line = JSON.parse(text) as Line; // the test on the other side writes nothing else
  if ("wire" in line) {
    asked.get(line.wire)?.(line.answer);
    asked.delete(line.wire);
    return;
  }
  carryOut(line).then(
    (done) => say({ id: line.id, done }),
    (trouble: unknown) => {
      const failed =
        trouble instanceof Error ? (trouble.stack ?? trouble.message) : String(trouble);
      say({ id: line.id, failed });
    },
  );
});

async function carryOut(order: Order): Promise<unknown> {
  if (order.do === "forget_all") {
    phones.clear();
    startClock();
    return {};
  }
  if (order.do === "new") {
    phones.set(order.phone, new SimulatedPhone(order.seed, wireOf(order.phone)));
    return {};
  }
  const phone = phones.get(order.phone);
  if (phone === undefined) throw new Error(`no such phone: ${order.phone}`);
  switch (order.do) {
    case "restart":
      phone.restart();
      return {};
    case "set_clock":
      phone.clockOffMs = order.off_ms;
      return {};
    case "sign_in":
      return phone.signIn(order.login, order.passphrase);
    case "save":
      return Promise.all(order.saves.map((save) => phone.save(save)));
    case "correct":
      return Promise.all(order.saves.map((save) => phone.correct({ ...save, entry: order.entry })));
    case "take_back":
      return Promise.all(
        order.saves.map((save) => phone.takeBack({ ...save, entry: order.entry })),
      );
    case "exchange":
      return phone.exchange(order.shown, order.tabs);
    case "mend":
      return phone.mend();
    case "look":
      return phone.look();
    default:
      throw new Error(`no such order: ${order.do}`);
  }
}

function wireOf(phone: string) {
  return async (request: WireRequest): Promise<WireAnswer | "off"> => {
    wireCount += 1;
    const wire = wireCount;
    const answer = await new Promise<WireAnswer | "off" | "lost">((resolve) => {
      asked.set(wire, resolve);
      say({ wire, phone, request });
    });
    if (answer === "lost") throw new TypeError("network");
    return answer;
  };
}

function say(line: object): void {
  process.stdout.write(`${JSON.stringify(line)}\n`);
}
