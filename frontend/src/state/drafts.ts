/** Typed form input that survives reload, crash and update (R12). */
import type { Json } from "../store/rows.ts";

export interface Draft<T extends Json> {
  load(): Promise<T | null>;
  /** Kept at once in memory, written within a moment. */
  save(typed: T): void;
  clear(): Promise<void>;
}

export declare function draft<T extends Json>(key: string): Draft<T>;
