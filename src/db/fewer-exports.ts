/** The binary format's number of the section that lists exports (WebAssembly Core Specification 2.0, 5.5.10). */
const EXPORTS = 7;
const HEADER_BYTES = 8;

/** An unsigned LEB128 number (5.2.2) and the place after it. */
function number(bytes: Uint8Array, at: number): [value: number, next: number] {
  let value = 0;
  for (let scale = 1; ; scale *= 128) {
    const byte = bytes[at++];
    if (byte === undefined) throw new RangeError("withFewerExports: needs a whole WebAssembly module, got one that ends within a number");
    value += (byte & 127) * scale;
    if (byte < 128) return [value, at];
  }
}

function numberBytes(value: number): Uint8Array {
  const out: number[] = [];
  for (; value >= 128; value = Math.floor(value / 128)) out.push((value % 128) | 128);
  return Uint8Array.from([...out, value]);
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** The body of an export section with only some of its entries. */
function fewerExports(body: Uint8Array, isNeeded: (name: string) => boolean): Uint8Array {
  const kept: Uint8Array[] = [], words = new TextDecoder();
  let [left, at] = number(body, 0);
  for (; left > 0; left -= 1) {
    const start = at, [length, name] = number(body, at), kind = name + length;
    [, at] = number(body, kind + 1);
    if (isNeeded(words.decode(body.subarray(name, kind)))) kept.push(body.subarray(start, at));
  }
  return joined([numberBytes(kept.length), ...kept]);
}

/**
 * A WebAssembly module that exports less; what it does is untouched.
 *
 * @throws {RangeError} when the bytes are no module
 */
export function withFewerExports(module: Uint8Array, isNeeded: (name: string) => boolean): Uint8Array<ArrayBuffer> {
  if (new DataView(module.buffer, module.byteOffset).getUint32(0) !== 0x0061736d) throw new RangeError("withFewerExports: needs a WebAssembly module, got other bytes");
  const parts = [module.subarray(0, HEADER_BYTES)];
  for (let at = HEADER_BYTES; at < module.length;) {
    const start = at, [size, body] = number(module, at + 1);
    at = body + size;
    if (module[start] !== EXPORTS) parts.push(module.subarray(start, at));
    else {
      const fewer = fewerExports(module.subarray(body, at), isNeeded);
      parts.push(Uint8Array.of(EXPORTS), numberBytes(fewer.length), fewer);
    }
  }
  return joined(parts);
}

/**
 * Which exports the engine's own script can ask for: those it names, and the ways in for calls through a table.
 *
 * The packaged engine exports all it is made of, 75,011 names, for extensions that are linked at run time. None can be had
 * here, and preparing them takes a second at each start.
 */
export function namedIn(script: string): (name: string) => boolean {
  const words = new Set(script.match(/[A-Za-z_$][\w$]*/g));
  return (name) => words.has(name) || name.startsWith("dynCall_");
}
