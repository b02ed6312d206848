import { gzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { encodingOf, headBytes, textOf } from "../../../src/records/formats/decoded-text.ts";
import { read } from "./reading.ts";

const signal = new AbortController().signal;
const text = async (bytes: BlobPart) => {
  const blob = new Blob([bytes]);
  let all = "";
  for await (const part of textOf(blob, await encodingOf(blob, signal), signal, () => undefined)) all += part;
  return all;
};
const utf16 = (words: string, big: boolean) => {
  const bytes = new Uint8Array(2 + words.length * 2), view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, !big);
  for (let at = 0; at < words.length; at += 1) view.setUint16(2 + at * 2, words.charCodeAt(at), !big);
  return bytes;
};

describe("text is decoded as it was written", () => {
  test("UTF-8 with and without byte order mark", async () => {
    expect(await text("\uFEFFnaïve £5")).toBe("naïve £5");
    expect(await text("naïve £5 ✓")).toBe("naïve £5 ✓");
  });
  test("UTF-16 of both orders, by its byte order mark", async () => {
    expect(await text(utf16("model,£5 ✓", false))).toBe("model,£5 ✓");
    expect(await text(utf16("model,£5 ✓", true))).toBe("model,£5 ✓");
  });
  test("Windows-1252 when the bytes are not UTF-8, even where the first bad byte comes late", async () => {
    const late = new Uint8Array(300_000).fill(97);
    late.set([0xa3, 0x35, 0x80], 299_000);
    expect((await text(late)).slice(299_000, 299_003)).toBe("£5€");
  });
  test("a letter that falls between two pieces of a file stays whole", async () => {
    const many = "é".repeat(1_100_000);
    expect(await text(`a${many}`)).toBe(`a${many}`);
  });
  test("gzip is unpacked whatever the file is called", async () => {
    expect(await text(new Uint8Array(gzipSync("ticket_no,model\n")))).toBe("ticket_no,model\n");
    expect(new TextDecoder().decode(await headBytes(new Blob([new Uint8Array(gzipSync("abcdef"))]), signal, 3))).toBe("abc");
  });
});

const bytes = (...numbers: (number | string)[]) => new Uint8Array(numbers.flatMap((one) => (typeof one === "number" ? [one] : [...one].map((letter) => letter.charCodeAt(0)))));

describe("a file that cannot be read says why in one sentence", () => {
  test.each([
    ["an empty file", "", "The file is empty."],
    ["blank lines only", "\n \n\n", "The file holds nothing but blank lines."],
    ["no known heading", "foo,bar\n1,2\n", "No heading row with names we know was found; the first row reads: foo, bar"],
    ["HTML that is called a table", "\uFEFF  <table><tr><td>ticket_no</td></tr></table>", "This is a web page (HTML), whatever its name says; export the records as CSV."],
    ["a PDF", "%PDF-1.7", "This is a PDF, not a table; export the records as CSV."],
    ["bytes that are no text", bytes("ticket", 0, 0, 1, 2), "This is not a text file, so no table can be read from it."],
    ["damaged packing", bytes(0x1f, 0x8b, 8, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10), "The packed file is damaged or was cut off; pack or download it again."],
    ["packing that was cut off", new Uint8Array(gzipSync(`ticket_no,model\n${"R-1,a\n".repeat(9999)}`)).slice(0, 60), "The packed file is damaged or was cut off; pack or download it again."],
    ["an open quotation mark", 'ticket_no,received_on,model\nR-1,2026-01-01,"a\nR-2,2026-01-01,b\n', "The quotation mark opened in line 2 is never closed, so the rows after it cannot be told apart."],
    ["too many columns", `ticket_no${",a".repeat(2_000)}\n`, "Row 1 has more than 2,000 columns; no shop's table is that wide."],
  ])("%s", async (_name, content, sentence) => {
    const done = await read(content);
    expect(done).toMatchObject({ unreadable: sentence, rows_read: 0, rows_to_fix: 0, rows_dropped: 0, rejects: [], tables: [] });
  });
  test("a file larger than the limit is refused before it is read", async () => {
    const huge = Object.defineProperty(new Blob(["ticket_no\n"]), "size", { value: 600 * 1024 ** 2 });
    expect((await read(huge)).unreadable).toMatch(/^The file is larger than 512 MB/);
  });
});
