import { crc32, deflateSync } from "node:zlib";
import type { Page } from "playwright-core";

/** A picture of few colours: a place in the palette for each point, row by row, the palette as red, green, blue. */
interface Indexed { readonly width: number; readonly height: number; readonly palette: readonly number[]; readonly points: string }

/** The commonest colours of a picture, and for every point the nearest of them; done in the page, which can read a PNG. */
async function fewColours(page: Page, png: Buffer, colours: number): Promise<Indexed> {
  return page.evaluate(async ({ base64, most }) => {
    const picture = await createImageBitmap(new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))])), { width, height } = picture;
    const canvas = new OffscreenCanvas(width, height).getContext("2d") as OffscreenCanvasRenderingContext2D;
    canvas.drawImage(picture, 0, 0);
    const data = new Uint32Array(canvas.getImageData(0, 0, width, height).data.buffer), counts = new Map<number, number>(), places = new Map<number, number>();
    for (const colour of data) counts.set(colour, (counts.get(colour) ?? 0) + 1);
    const parts = (colour: number) => [colour & 255, (colour >> 8) & 255, (colour >> 16) & 255] as const;
    const palette = [...counts].sort((one, other) => other[1] - one[1]).slice(0, most).map(([colour]) => parts(colour));
    const nearest = (colour: number) => {
      const [r, g, b] = parts(colour), far = palette.map(([pr, pg, pb]) => (pr - r) ** 2 + (pg - g) ** 2 + (pb - b) ** 2);
      return far.indexOf(Math.min(...far));
    };
    let points = "";
    for (const colour of data) {
      const place = places.get(colour) ?? nearest(colour);
      places.set(colour, place);
      points += String.fromCharCode(place);
    }
    return { width, height, palette: palette.flat(), points: btoa(points) };
  }, { base64: png.toString("base64"), most: colours });
}

function chunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, "latin1"), data]), length = Buffer.alloc(4), sum = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/**
 * A screenshot written again with a palette of its commonest colours, about a third of its bytes (PNG, ISO/IEC 15948, colour type 3).
 *
 * @param page any page; nothing of it is changed
 */
export async function indexedPng(page: Page, png: Buffer, colours = 128): Promise<Buffer> {
  const { width, height, palette, points } = await fewColours(page, png, colours), at = Buffer.from(points, "base64"), head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  // Eight bits a point, by palette, deflated, no filter to speak of, not interlaced.
  head.set([8, 3, 0, 0, 0], 8);
  const lines = Buffer.concat(Array.from({ length: height }, (_, row) => Buffer.concat([Buffer.from([0]), at.subarray(row * width, (row + 1) * width)])));
  return Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk("IHDR", head), chunk("PLTE", Buffer.from(palette)), chunk("IDAT", deflateSync(lines, { level: 9 })), chunk("IEND", Buffer.alloc(0))]);
}
