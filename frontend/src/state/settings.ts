/** Choices this phone remembers: light, kitchen chosen, last instrument. */
import { computed, signal } from "@preact/signals";
import { choicesOf, putChoice } from "../store/phone.ts";
import type { Json } from "../store/rows.ts";
import { current, house, report } from "./house.ts";

export type Light = "phone" | "kitchen" | "evening" | "sun";

const LIGHTS: readonly Light[] = ["phone", "kitchen", "evening", "sun"];
const choices = signal<ReadonlyMap<string, Json>>(new Map());

/** The light chosen on this phone; "phone" follows the system. */
export const light = computed<Light>(
  () => LIGHTS.find((one) => one === choices.value.get("light")) ?? "phone",
);
/** The place id of the kitchen or stall the person chose on this phone, or null. */
export const kitchen = computed<string | null>(() => {
  const chosen = choices.value.get(ownKey("kitchen"));
  return typeof chosen === "string" ? chosen : null;
});

export function setLight(chosen: Light): void {
  keep("light", chosen);
}

export function setKitchen(place: string | null): void {
  keep(ownKey("kitchen"), place);
}

/** Any other remembered choice of the person on the screen; null when there is none. */
export function remembered(key: string): Json {
  return choices.value.get(ownKey(key)) ?? null;
}

export function remember(key: string, choice: Json): void {
  keep(ownKey(key), choice);
}

/** Remembers something of the phone itself: nobody need be on the screen. */
export function rememberOnPhone(key: string, choice: Json): void {
  keep(key, choice);
}

/** A choice of the phone itself, whoever is on the screen. */
export function choiceOfPhone(key: string): Json {
  return choices.value.get(key) ?? null;
}

export async function loadChoices(): Promise<void> {
  choices.value = await choicesOf(house().phone);
}

function ownKey(key: string): string {
  return `${current.value?.device ?? ""}/${key}`;
}

function keep(key: string, choice: Json): void {
  choices.value = new Map(choices.value).set(key, choice);
  putChoice(house().phone, key, choice).catch((trouble: unknown) => {
    report("keeping a choice", trouble); // it holds until the page goes
  });
}
