import { DAMAGED_WORKBOOK, LIMITS, Unreadable } from "./unreadable.ts";

/** Told what stands in an XML text, in its order. Names are without their prefix. */
export interface XmlReader {
  /** @param attributes as they are written; see `attribute` */
  open(name: string, attributes: string): void;
  close(name: string): void;
  text(text: string): void;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const LAST_CODE = 0x10ffff;

function letterOf(written: string, name: string): string {
  if (!name.startsWith("#")) return Object.hasOwn(ENTITIES, name) ? (ENTITIES[name] ?? written) : written;
  const code = /^#x/i.test(name) ? Number.parseInt(name.slice(2), 16) : Number.parseInt(name.slice(1), 10);
  return code >= 0 && code <= LAST_CODE ? String.fromCodePoint(code) : written;
}

/** Text of an XML file with its entities and line ends as they are meant. */
function plain(text: string): string {
  const lines = text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
  return lines.includes("&") ? lines.replace(/&([a-z]+|#\d{1,7}|#x[\da-f]{1,6});/gi, letterOf) : lines;
}

const localName = (name: string) => name.slice(name.indexOf(":") + 1);

const isBlank = (code: number) => code === 32 || code === 10 || code === 9 || code === 13;

/** Calls `take` with each attribute of an element, its name without prefix, until `take` has what it wants and gives true. */
export function eachAttribute(attributes: string, take: (name: string, value: string) => boolean | undefined): void {
  for (let at = 0; ;) {
    while (isBlank(attributes.charCodeAt(at))) at += 1;
    const equals = attributes.indexOf("=", at);
    if (equals === -1) return;
    let open = equals + 1;
    while (isBlank(attributes.charCodeAt(open))) open += 1;
    const close = open < attributes.length ? attributes.indexOf(attributes.charAt(open), open + 1) : -1;
    if (close === -1 || take(localName(attributes.slice(at, equals).trimEnd()), plain(attributes.slice(open + 1, close))) === true) return;
    at = close + 1;
  }
}

/**
 * One attribute of an element, whatever its prefix; null when it is not there.
 *
 * @example
 * attribute(' r:id="rId1" name="Jobs &amp; parts"', "name") // => "Jobs & parts"
 */
export function attribute(attributes: string, name: string): string | null {
  let found: string | null = null;
  eachAttribute(attributes, (own, value) => {
    if (own === name) found = value;
    return own === name;
  });
  return found;
}

const MORE = 62, DOUBLE = 34, SINGLE = 39;

/** Place of the `>` that ends a tag; one inside quotation marks does not. */
function tagEnd(text: string, from: number): number {
  for (let at = from, quote = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (quote !== 0) quote = code === quote ? 0 : quote;
    else if (code === MORE) return at;
    else if (code === DOUBLE || code === SINGLE) quote = code;
  }
  return -1;
}

/** Reads an XML text that comes in pieces, holding no more than the piece at hand. */
export class XmlScan {
  private rest = "";
  private readonly reader: XmlReader;

  constructor(reader: XmlReader) {
    this.reader = reader;
  }

  /** @throws {Unreadable} when the text has a document type (which may define text that grows without end) or a tag never ends */
  push(piece: string): void {
    const text = this.rest + piece;
    let at = 0;
    for (;;) {
      const open = text.indexOf("<", at);
      if (open === -1) break;
      if (open > at) this.reader.text(plain(text.slice(at, open)));
      at = open;
      const next = this.markup(text, open);
      if (next === -1) break;
      at = next;
    }
    this.rest = text.slice(at);
    if (this.rest.length > LIMITS.row_chars) throw new Unreadable(DAMAGED_WORKBOOK);
  }

  /** @throws {Unreadable} when the text ends within a tag */
  end(): void {
    if (this.rest.includes("<")) throw new Unreadable(DAMAGED_WORKBOOK);
  }

  /** Reads what begins with `<` at `open`; gives the place behind it, or -1 when its end has not come yet. */
  private markup(text: string, open: number): number {
    const mark = text.charAt(open + 1);
    if (mark === "!") return this.declaration(text, open);
    if (mark === "?") return behind(text, "?>", open);
    const end = tagEnd(text, open);
    if (end === -1) return -1;
    if (mark === "/") this.reader.close(localName(text.slice(open + 2, end).trim()));
    else this.element(text.slice(open + 1, end));
    return end + 1;
  }

  private element(tag: string): void {
    const is_empty = tag.endsWith("/"), inner = is_empty ? tag.slice(0, -1) : tag, blank = inner.search(/\s/);
    const name = localName(blank === -1 ? inner : inner.slice(0, blank));
    this.reader.open(name, blank === -1 ? "" : inner.slice(blank));
    if (is_empty) this.reader.close(name);
  }

  private declaration(text: string, open: number): number {
    const start = text.slice(open, open + 9);
    if (start.startsWith("<!--")) return behind(text, "-->", open);
    if (start === "<![CDATA[") {
      const end = behind(text, "]]>", open);
      if (end !== -1) this.reader.text(text.slice(open + 9, end - 3));
      return end;
    }
    if (start.length === 9) throw new Unreadable(DAMAGED_WORKBOOK);
    return -1;
  }
}

function behind(text: string, end: string, from: number): number {
  const at = text.indexOf(end, from);
  return at === -1 ? -1 : at + end.length;
}

/** Reads a whole XML text that comes in pieces. */
export async function scanXml(text: AsyncIterable<string>, reader: XmlReader): Promise<void> {
  const scan = new XmlScan(reader);
  for await (const piece of text) scan.push(piece);
  scan.end();
}
