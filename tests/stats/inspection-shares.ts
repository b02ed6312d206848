import type { LifeLine } from "../../src/stats/life-lines.ts";

/** Parts inspected once each: `failed` of `inspected` at an exposure. */
export const inspectedOnce = (exposure: number, inspected: number, failed: number): LifeLine[] => [
  ...(failed > 0 ? [{ low: 0, high: exposure, count: failed }] : []),
  ...(inspected > failed ? [{ low: exposure, high: Infinity, count: inspected - failed }] : []),
];
