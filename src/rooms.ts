import type { Component } from "svelte";

export interface Room {
  /** Folder under `rooms`, and what the address says after `#/`. */
  readonly slug: string;
  /** As the owner calls it; stands in the index and in the window's title. */
  readonly title: string;
  readonly load: () => Promise<{ default: Component }>;
}

const there = import.meta.glob<{ default: Component }>("./rooms/*/Room.svelte");
const titles = { morning: "Morning sheet", failures: "Failures", stock: "Stock", labour: "Labour", records: "Records" };

/** In the order of the index; the first is where the app opens. */
export const ROOMS: readonly Room[] = Object.entries(titles).flatMap(([slug, title]) => {
  const load = there[`./rooms/${slug}/Room.svelte`];
  return load ? [{ slug, title, load }] : [];
});
