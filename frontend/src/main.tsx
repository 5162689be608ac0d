/** Wiring only: starts the app and shows the screen that the address names. */
import "./look.css";
import "./parts/large_text.css";
import { effect, useComputed, useSignal, useSignalEffect } from "@preact/signals";
import { type ComponentType, render } from "preact";
import { ROUTES } from "./screens/routes.ts";
import { isBlocked, start } from "./state/app.ts";
import { report } from "./state/house.ts";
import { matched, path } from "./state/route.ts";
import { current } from "./state/session.ts";
import { light } from "./state/settings.ts";
import { reloadOnceForMissingPart } from "./state/update.ts";
import { APP_TEXT } from "./text/app.ts";

/** "Loading" is said only to those who have waited. */
const SAY_LOADING_AFTER_MS = 1000;
const TIMERS_AFTER_MS = 2000;
const SIGN_IN = "/sign-in";

interface Loaded {
  path: string;
  Screen: ComponentType<{ params: Record<string, string> }>;
  params: Record<string, string>;
}

function App() {
  const loaded = useSignal<Loaded | null>(null);
  const sentence = useSignal("");
  // Who is not known here can do one thing only, wherever the link led.
  const wanted = useComputed(() => (isShutOut() ? SIGN_IN : path.value));
  useSignalEffect(() => {
    const asked = wanted.value;
    const timer = setTimeout(() => {
      sentence.value = APP_TEXT.loading;
    }, SAY_LOADING_AFTER_MS);
    void load(asked).then((found) => {
      clearTimeout(timer);
      if (asked !== wanted.peek()) return;
      sentence.value = found === null ? APP_TEXT.part_missing : "";
      if (found !== null) loaded.value = found;
    });
    return () => clearTimeout(timer);
  });
  if (isBlocked.value) return <p role="alert">{APP_TEXT.blocked}</p>;
  if (sentence.value !== "") return <p role="status">{sentence.value}</p>;
  if (loaded.value === null) return null;
  const { Screen, params } = loaded.value;
  return <Screen key={loaded.value.path} params={params} />;
}

/** A link to joining leads there: its code comes with it. */
function isShutOut(): boolean {
  return current.value === null && !path.value.startsWith(SIGN_IN);
}

async function load(asked: string): Promise<Loaded | null> {
  for (const route of ROUTES) {
    const params = matched(route.pattern, asked);
    if (params === null) continue;
    try {
      return { path: asked, params, Screen: (await route.load()).Screen };
    } catch (trouble) {
      report(`loading ${route.pattern}`, trouble);
      await reloadOnceForMissingPart();
      return null;
    }
  }
  return asked === "/" ? null : load("/");
}

/** Timers of logs, once the first screen stands; without its part they are seen in the log alone. */
async function watchTimers(): Promise<void> {
  try {
    (await import("./screens/common/running_timers.ts")).watchTimers();
  } catch (trouble) {
    report("watching timers", trouble);
  }
}

effect(() => {
  if (light.value === "phone") delete document.documentElement.dataset.light;
  else document.documentElement.dataset.light = light.value;
});

const root = document.getElementById("app");
if (root === null) throw new Error("the page has no place for the app");
// Before there is a screen: an older tab may hold the databases, and waiting looks like nothing.
const stopTelling = effect(() => {
  if (isBlocked.value) root.textContent = APP_TEXT.blocked;
});
start()
  .finally(stopTelling)
  .then(
    () => {
      render(<App />, root);
      setTimeout(() => void watchTimers(), TIMERS_AFTER_MS);
    },
    (trouble: unknown) => {
      report("starting", trouble);
      root.textContent = APP_TEXT.not_started;
    },
  );
