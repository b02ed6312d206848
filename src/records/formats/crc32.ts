/** The polynomial of CRC-32, lowest bit first (ITU-T V.42, 8.1.1.6.2; in zip archives PKWARE APPNOTE 6.3.10, 4.4.7). */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let left = byte;
  for (let bit = 0; bit < 8; bit += 1) left = left & 1 ? (left >>> 1) ^ POLYNOMIAL : left >>> 1;
  return left;
});

/**
 * The check value of bytes, by which an archive tells that a file in it is what was written.
 *
 * @param before the value of the bytes before these, when they come in pieces
 * @example
 * crc32(new TextEncoder().encode("123456789")) // => 0xcbf43926
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let left = ~before;
  for (let at = 0; at < bytes.length; at += 1) left = (TABLE[(left ^ (bytes[at] as number)) & 0xff] as number) ^ (left >>> 8);
  return ~left >>> 0;
}
