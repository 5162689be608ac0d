/** A small hash router: #/weigh-in/<batch>/<line>. Deep links work after a cold start offline. */
import { signal } from "@preact/signals";

/** The path after "#", always beginning with "/". */
export const path = signal("/");

/** Goes to a path: `goTo("/weigh-in/" + batch + "/" + line)`. */
export declare function goTo(path: string): void;
export declare function goBack(): void;

/** The parameters of a path if the pattern fits (`/weigh-in/:batch/:line`), else null. */
export declare function matched(pattern: string, path: string): Record<string, string> | null;
