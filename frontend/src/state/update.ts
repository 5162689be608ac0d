/** A new version of the app waits until the person agrees and no form is half filled (R85, R86). */
import { signal } from "@preact/signals";
import { dirtyDrafts, writeDrafts } from "./drafts.ts";
import { report } from "./house.ts";

const WORKER_URL = "/serviceworker.js";
const LOOK_EVERY_MS = 3_600_000;
const RELOADED_KEY = "reloaded_for_a_missing_part";

/** A new version is ready; "update" may be offered. */
export const updateIsReady = signal(false);

let waitingWorker: ServiceWorker | null = null;

/** Registers the worker and notices when a new one waits. Without workers all else works. */
export function startUpdates(): void {
  if (!("serviceWorker" in navigator) || import.meta.env.DEV) return;
  register().catch((trouble: unknown) => {
    // Without signal there is nothing to register anew, and the worker that is here serves on.
    if (!(trouble instanceof TypeError)) report("registering the worker", trouble);
  });
}

/** Lets the waiting version in, then loads the page once. Not while a form is half filled. */
export function takeUpdate(): boolean {
  if (waitingWorker === null || dirtyDrafts.value.length > 0) return false;
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), {
    once: true,
  });
  waitingWorker.postMessage({ type: "TAKE_OVER" });
  return true;
}

/**
 * A part of the app could not be loaded: what was typed is kept and the page is loaded anew,
 * once, never in a loop (R88). False: it was tried already, or there is no signal.
 */
export async function reloadOnceForMissingPart(): Promise<boolean> {
  if (!navigator.onLine || sessionStorage.getItem(RELOADED_KEY) !== null) return false;
  sessionStorage.setItem(RELOADED_KEY, "yes");
  await writeDrafts();
  location.reload();
  return true;
}

async function register(): Promise<void> {
  const registration = await navigator.serviceWorker.register(trustedWorkerUrl(), { scope: "/" });
  notice(registration);
  registration.addEventListener("updatefound", () => {
    const installing = registration.installing;
    installing?.addEventListener("statechange", () => notice(registration));
  });
  setInterval(() => registration.update().catch(() => undefined), LOOK_EVERY_MS);
}

function notice(registration: ServiceWorkerRegistration): void {
  // The very first worker replaces nothing: there is no update to agree to.
  if (registration.waiting === null || navigator.serviceWorker.controller === null) return;
  waitingWorker = registration.waiting;
  updateIsReady.value = true;
}

interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { createScriptURL(url: string): string },
  ): { createScriptURL(url: string): string };
}

/** The one address a worker may come from, past the content rules of the page (R72). */
function trustedWorkerUrl(): string {
  const types = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes; // not in the library yet
  if (types === undefined) return WORKER_URL;
  const policy = types.createPolicy("kitchenlog", {
    createScriptURL(url) {
      if (url !== WORKER_URL) throw new TypeError("only our own worker may be registered");
      return url;
    },
  });
  return policy.createScriptURL(WORKER_URL);
}
