/** How far a circle seen from above at a slant is pressed flat. */
const FLAT = 0.32;

const two = (value: number): string => String(Math.round(value * 100) / 100);
const at = (x: number, y: number): string => `${two(x)} ${two(y)}`;

/** A circle of radius `r` lying at height `y`, as a path. */
export function round(r: number, y = 0, x = 0): string {
  const flat = two(r * FLAT), wide = two(r);
  return `M${at(x - r, y)}a${wide} ${flat} 0 1 1 ${two(2 * r)} 0a${wide} ${flat} 0 1 1 ${two(-2 * r)} 0z`;
}

/** The outline of a standing cylinder of radius `r` between two heights; `below` makes it a cone. */
export function drum(r: number, top: number, bottom: number, below = r): string {
  return `M${at(-r, top)}L${at(-below, bottom)}a${two(below)} ${two(below * FLAT)} 0 0 0 ${two(2 * below)} 0`
    + `L${at(r, top)}a${two(r)} ${two(r * FLAT)} 0 0 0 ${two(-2 * r)} 0z`;
}

/** The near half of a circle lying at height `y`: an edge or a groove around a cylinder. */
export const groove = (r: number, y: number): string => `M${at(-r, y)}a${two(r)} ${two(r * FLAT)} 0 0 0 ${two(2 * r)} 0`;

/** The rim of a toothed wheel at height `y`. */
export function teeth(r: number, depth: number, count: number, y = 0): string {
  const points = Array.from({ length: 4 * count }, (_, i) => {
    const turn = (2 * Math.PI * (i + 0.5)) / (4 * count), reach = i % 4 < 2 ? r : r - depth;
    return at(reach * Math.cos(turn), y + FLAT * reach * Math.sin(turn));
  });
  return `M${points.join("L")}z`;
}

/** A wire wound `turns` times around the axis between two heights. */
export function coil(r: number, top: number, bottom: number, turns: number): string {
  const step = (bottom - top) / turns;
  const loops = Array.from({ length: turns }, (_, i) => {
    const y = top + i * step;
    return `C${at(-r * 1.3, y + 1.6)} ${at(-r * 0.6, y + step * 0.9)} ${at(0, y + step * 0.75)}S${at(r * 1.3, y + step * 0.2)} ${at(i === turns - 1 ? r * 0.7 : r * 0.35, y + step)}`;
  });
  return `M${at(r * 0.35, top)}${loops.join("")}`;
}

/** A bent line through points, closed when it is the outline of a plate. */
export const through = (points: readonly (readonly [number, number])[], closed = true): string =>
  `M${points.map(([x, y]) => at(x, y)).join("L")}${closed ? "z" : ""}`;

/** Upright strokes on the near side of a cylinder, as rollers, ribs or a knurl show. */
export function ribs(r: number, top: number, bottom: number, count: number): string {
  return Array.from({ length: count }, (_, i) => {
    const x = r * Math.cos(Math.PI * (i + 1) / (count + 1)), sag = FLAT * Math.sqrt(r * r - x * x);
    return `M${at(x, top + sag)}L${at(x, bottom + sag)}`;
  }).join("");
}
