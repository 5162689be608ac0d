/** The service worker: the app's shell by version and nothing else; data lives in IndexedDB alone. */
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";
import { handOver } from "./hand_over.ts";

declare const self: ServiceWorkerGlobalScope & {
  __WB_MANIFEST: { url: string; revision: string | null }[];
};

/** Background sync, where a browser has it; it is one more trigger and nothing hangs on it (R19). */
interface SyncEvent extends ExtendableEvent {
  readonly tag: string;
}

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
// Every address of the app is the one page; what belongs to the server is left to the network.
registerRoute(
  new NavigationRoute(createHandlerBoundToURL("/"), {
    denylist: [/^\/api\//, /^\/static\//, /^\/admin/, /^\/healthz/, /^\/documents\//],
  }),
);

// The page of the first visit was loaded before there was a worker: its screens are asked for later,
// and by then the signal may be gone.
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  const told: unknown = event.data;
  // Only a person's word lets a new version in (R86).
  if (typeof told === "object" && told !== null && "type" in told && told.type === "TAKE_OVER") {
    event.waitUntil(self.skipWaiting());
  }
});

self.addEventListener("sync", (event) => {
  const { tag } = event as SyncEvent; // not in the library yet
  if (tag === "outbox") (event as SyncEvent).waitUntil(handOver());
});
