/** Choices this phone remembers: light, kitchen chosen, last instrument. */
import { signal } from "@preact/signals";
import type { Json } from "../store/rows.ts";

export type Light = "phone" | "kitchen" | "evening" | "sun";

export const light = signal<Light>("phone");
/** The place id of the kitchen or stall chosen on this phone, or null. */
export const kitchen = signal<string | null>(null);

export declare function setLight(light: Light): void;
export declare function setKitchen(place: string | null): void;

/** Any other remembered choice of the person on the screen. */
export declare function remembered(key: string): Json;
export declare function remember(key: string, choice: Json): void;
