import type { Component } from "svelte";

export interface Room {
  /** Folder under `rooms`, and what the address says after `#/`. */
  readonly slug: string;
  /** As the owner calls it; stands in the index and in the window's title. */
  readonly title: string;
  readonly load: () => Promise<{ default: Component }>;
  /** What stands there while the records are still being opened, if something was kept from the last time. */
  readonly meanwhile?: () => Promise<{ default: Component }>;
}

/** Rooms that are looked up now and then: their links stand at the foot of the index. */
export const FOOT_ROOMS: readonly Room[] = [
  { slug: "settings", title: "Settings", load: () => import("./rooms/settings/Room.svelte") },
  { slug: "method", title: "How it is worked out", load: () => import("./rooms/method/Room.svelte") },
  { slug: "cautions", title: "Cautions", load: () => import("./rooms/cautions/Room.svelte") },
];

/** In the order of the index; the first is where the app opens. */
export const ROOMS: readonly Room[] = [
  { slug: "morning", title: "Morning sheet", load: () => import("./rooms/morning/Room.svelte"), meanwhile: () => import("./rooms/morning/KeptSheet.svelte") },
  { slug: "card", title: "Reel card", load: () => import("./rooms/card/Room.svelte") },
  { slug: "failures", title: "Failures", load: () => import("./rooms/failures/Room.svelte") },
  { slug: "stock", title: "Stock", load: () => import("./rooms/stock/Room.svelte") },
  { slug: "wear", title: "Salt & wear", load: () => import("./rooms/wear/Room.svelte") },
  { slug: "labour", title: "Labour", load: () => import("./rooms/labour/Room.svelte") },
  { slug: "season", title: "Season", load: () => import("./rooms/season/Room.svelte") },
  { slug: "bench", title: "Bench", load: () => import("./rooms/bench/Room.svelte") },
  { slug: "records", title: "Records", load: () => import("./rooms/records/Room.svelte") },
];
