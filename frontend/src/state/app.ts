/** Starting the app: databases, sheets, sync, other tabs, the worker. */
import { devicesOf, openPhone } from "../store/phone.ts";
import { prune } from "../store/prune.ts";
import { type ExchangeReport, exchangeAll } from "../sync/exchange.ts";
import { type Runner, startRunner } from "../sync/runner.ts";
import { browserWorld } from "../sync/world.ts";
import { askBackgroundSync } from "./background.ts";
import { writeDrafts } from "./drafts.ts";
import { watchHands } from "./hands.ts";
import { current, deviceDb, house, report, setHouse } from "./house.ts";
import { fetchLater, writing } from "./lazy.ts";
import { isOnlineHint, lastTrouble, refreshOutbox, setRunner, waiting } from "./outbox.ts";
import { startRouting } from "./route.ts";
import { CURRENT_CHOICE, refreshPeople } from "./session.ts";
import { choiceOfPhone, loadChoices } from "./settings.ts";
import { isStillLoading, loadShelf, refold } from "./shelf.ts";
import { startUpdates } from "./update.ts";
import { currentOf, isUsable } from "./who.ts";

export { isStorageKept } from "./app_storage.ts";
export { isBlocked } from "./house.ts";
export { takeUpdate, updateIsReady } from "./update.ts";

const TABS = "kitchenlog";
/** Tidying waits until a cold start is over. */
const PRUNE_AFTER_MS = 60_000;

/** Opens what this phone keeps and shows it; nothing here waits for the network. */
export async function start(): Promise<void> {
  const world = browserWorld();
  const tabs = new BroadcastChannel(TABS);
  const phone = await openPhone();
  setHouse({
    world,
    phone,
    zone: () => Intl.DateTimeFormat().resolvedOptions().timeZone,
    tell: (device, subjects) => tabs.postMessage({ device, subjects }),
    onSaved: () => {
      runner.poke("saved");
      // Once for all that will wait: the worker wakes at once, and its reading holds back a save.
      if (waiting.value.length === 1) void askBackgroundSync();
    },
    onGivenWay: () => void writeDrafts().then(() => location.reload()),
  });
  const runner = startRunner({
    world,
    exchange: async (ask) =>
      exchangeAll({
        world,
        phone,
        open: deviceDb,
        kinds: (await writing()).TABLE_NUMBER,
        shown: current.value?.device ?? null,
        ...ask,
      }),
    onReport: (told) => void afterExchange(told),
    onDefect: (defect) => report("exchange", defect),
  });
  setRunner(runner);
  watchHands();
  startRouting();
  await loadChoices();
  await showLastPerson();
  listenTo(runner, tabs);
  runner.poke("start");
  startUpdates();
  world.after(PRUNE_AFTER_MS, () => void tidy());
  fetchLater().catch((trouble: unknown) => report("fetching the rest of the app", trouble));
}

async function showLastPerson(): Promise<void> {
  const rows = (await devicesOf(house().phone)).filter(isUsable);
  const row = rows.find((one) => one.device === choiceOfPhone(CURRENT_CHOICE));
  current.value = row === undefined ? null : currentOf(row);
  await Promise.all([loadShelf(), refreshOutbox(), refreshPeople()]);
}

/** Lets go of entries that no open sheet needs any more. */
async function tidy(): Promise<void> {
  const device = current.value?.device;
  if (device === undefined) return;
  try {
    await prune(await deviceDb(device), house().world.nowMs());
  } catch (trouble) {
    report("tidying", trouble);
  }
}

async function afterExchange(told: ExchangeReport | null): Promise<void> {
  const device = current.value?.device;
  if (told === null || device === undefined) return;
  lastTrouble.value = told.trouble?.code ?? null;
  const touched = told.touched.get(device) ?? [];
  if (isNothingNew(told)) return;
  try {
    if (told.reset.includes(device) || isStillLoading.value) await loadShelf();
    else await refold(touched);
    await Promise.all([refreshOutbox(), refreshPeople()]);
    if (!(await devicesOf(house().phone)).some((row) => row.device === device && isUsable(row))) {
      current.value = null; // shut out: what waits stays, locked (R64)
      await loadShelf();
    }
  } catch (defect) {
    report("after an exchange", defect);
  }
  if (touched.length > 0) house().tell(device, touched);
}

/** Nobody answered and nothing came: all that could be read again stands on the screen. */
function isNothingNew(told: ExchangeReport): boolean {
  const isSilent = told.trouble?.code === "no_signal" && told.touched.size === 0;
  return isSilent && told.reset.length === 0 && !isStillLoading.value;
}

/** The triggers of R19, and what other tabs tell. */
function listenTo(runner: Runner, tabs: BroadcastChannel): void {
  isOnlineHint.value = navigator.onLine;
  addEventListener("online", () => {
    isOnlineHint.value = true;
    runner.poke("online");
  });
  addEventListener("offline", () => {
    isOnlineHint.value = false;
  });
  document.addEventListener("visibilitychange", () => {
    const isShown = document.visibilityState === "visible";
    if (!isShown) leave();
    runner.poke(isShown ? "shown" : "hidden");
  });
  addEventListener("pagehide", leave);
  navigator.serviceWorker?.addEventListener("message", () => runner.poke("message"));
  tabs.addEventListener("message", (event: MessageEvent<unknown>) => void hearOtherTab(event.data));
}

/** From here on only the worker can hand over. */
function leave(): void {
  void writeDrafts();
  if (waiting.value.length > 0) void askBackgroundSync();
}

async function hearOtherTab(told: unknown): Promise<void> {
  if (typeof told !== "object" || told === null || !("device" in told)) return;
  if (told.device !== current.value?.device) return;
  const subjects = "subjects" in told && Array.isArray(told.subjects) ? told.subjects : null;
  if (subjects === null) await loadShelf();
  else await refold(subjects.filter((one): one is string => typeof one === "string"));
  await refreshOutbox();
}
