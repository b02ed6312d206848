import { readFileSync } from "node:fs";
import { csvText } from "../../src/records/csv-out.ts";

/** What a text would do if some screen took it for more than a text; `struck` would then be set. */
export const PAYLOADS = [
  `<img src=x onerror="globalThis.struck=1">`, `"><script>globalThis.struck=2</script>`, `<svg/onload=globalThis.struck=3>`, `</title><h1 class=struck>Struck</h1>`,
  `'-globalThis.struck-'`, `<a href="javascript:globalThis.struck=4">look</a>`, `{{globalThis.struck=5}}`, `\${globalThis.struck=6}`, `&lt;b class=struck&gt;`, `<iframe srcdoc="x" class=struck>`,
  `<style>*{display:none}</style>`, `<math><mtext><table><mglyph><style class=struck>`, `]]><b class=struck>`, `<!--`, `x" onfocus="globalThis.struck=7" autofocus="`,
] as const;
/** Names of the language, of formulas, and texts that screens show wrongly. */
export const NAMES = [
  "__proto__", "constructor", "toString", "hasOwnProperty", "valueOf", "=1+1", "@SUM(A1:A9)", "+44 cmd", "-2+3", "\u202Egnp.exe", "ㅤ", "👩‍🔧🎣", "İıŞğ", "ﷺ العربية", "x".repeat(180), "null", "undefined", "NaN", "[object Object]", "0", "../../etc", "a;b|c\\d", "Zo\u0308e",
] as const;
const ALL = [...PAYLOADS, ...NAMES];

const DEMO = new URL("../../data/demo/", import.meta.url);

/** Cells of a demo table; the demo's cells hold no line ends. */
function cellsOf(table: string): string[][] {
  return readFileSync(new URL(`${table}.csv`, DEMO), "utf8").trimEnd().split(/\r?\n/).map((line) =>
    [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? ""));
}

/** One kind of name: each of its texts in the demo becomes another hostile one, everywhere the same. */
class Renamed {
  private readonly names = new Map<string, string>();
  constructor(private readonly kind: string) {}

  of(text: string): string {
    if (text === "") return "";
    const known = this.names.get(text), at = this.names.size;
    const name = known ?? (at < ALL.length ? ALL[at] as string : `${this.kind}${at} ${ALL[at % ALL.length] as string}`);
    this.names.set(text, name);
    return name;
  }
}

const FREE = ["complaint", "note", "technician", "batch", "material", "name"];

/**
 * The tables of the demo with hostile names in the place of its makers, models, parts, suppliers, serials and free texts.
 *
 * @param tickets how many of its newest tickets
 */
export function hostileShop(tickets: number): Record<string, string> {
  const kinds = { maker: new Renamed("m"), model: new Renamed("r"), part_no: new Renamed("p"), supplier: new Renamed("s"), serial: new Renamed("n"), order_no: new Renamed("o"), replaces: new Renamed("p"), ...Object.fromEntries(FREE.map((name) => [name, new Renamed("t")])) } as Record<string, Renamed>;
  kinds["replaces"] = kinds["part_no"] as Renamed;
  const [head = [], ...rows] = cellsOf("tickets"), kept = new Set(rows.slice(-tickets).map(([ticket_no]) => ticket_no));
  return Object.fromEntries(["tickets", "findings", "models", "parts", "fits", "suppliers", "orders"].map((table) => {
    const [names = [], ...all] = table === "tickets" ? [head, ...rows] : cellsOf(table);
    const mine = table === "tickets" || table === "findings" ? all.filter(([ticket_no]) => kept.has(ticket_no ?? "")) : all;
    // As another program writes it, without our guard against formulas.
    return [`${table}.csv`, `${csvText(names, [])}${mine.map((row) => `${row.map((cell, at) => `"${(kinds[names[at] ?? ""]?.of(cell) ?? cell).replaceAll('"', '""')}"`).join()}\r\n`).join("")}`];
  }));
}
