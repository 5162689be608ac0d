/** A small hash router: #/weigh-in/<batch>/<line>. Deep links work after a cold start offline. */
import { signal } from "@preact/signals";

/** The path after "#", always beginning with "/". */
export const path = signal("/");

/** Goes to a path: `goTo("/weigh-in/" + batch + "/" + line)`; the back key returns. */
export function goTo(wanted: string): void {
  location.hash = wanted;
}

/** The parameters of a path if the pattern fits (`/weigh-in/:batch/:line`), else null. */
export function matched(pattern: string, wanted: string): Record<string, string> | null {
  const steps = pattern.split("/");
  const given = wanted.split("/");
  if (steps.length !== given.length) return null;
  const params: Record<string, string> = {};
  for (const [index, step] of steps.entries()) {
    const value = decoded(given[index] ?? "");
    if (value === null) return null;
    if (step.startsWith(":")) params[step.slice(1)] = value;
    else if (step !== value) return null;
  }
  return params;
}

/** Follows the address bar. */
export function startRouting(): void {
  const read = () => {
    path.value = pathOf(location.hash);
  };
  addEventListener("hashchange", read);
  read();
}

/** "#/stock?x" -> "/stock"; anything else is the first screen. */
export function pathOf(hash: string): string {
  const [wanted = ""] = hash.slice(1).split("?");
  return wanted.startsWith("/") ? wanted : "/";
}

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch (trouble) {
    if (trouble instanceof URIError) return null;
    throw trouble;
  }
}
