import { unzipSync, zipSync } from "fflate";
import { LIMITS } from "../formats/unreadable.ts";
import { isTooDense } from "../formats/zip-file.ts";
import { BackupRefused } from "./manifest.ts";

/** Pictures do not get smaller. */
const PACKED = /\.jpg$/;

/**
 * Files as one zip archive that ordinary tools open.
 *
 * @param day `YYYY-MM-DD`, the date of every file in it, so that equal content gives equal bytes
 */
export function zipped(files: ReadonlyMap<string, Uint8Array>, day: string): Uint8Array<ArrayBuffer> {
  return zipSync(Object.fromEntries([...files].map(([name, bytes]) => [name, [bytes, { mtime: `${day}T12:00:00`, level: PACKED.test(name) ? 0 : 6 }]]))) as Uint8Array<ArrayBuffer>;
}

/**
 * The files of a zip archive that are wanted, by name.
 *
 * @throws {BackupRefused} when it is no zip archive, damaged, or larger than the limit
 */
export function unzipped(archive: Uint8Array, wanted: (name: string) => boolean): ReadonlyMap<string, Uint8Array> {
  let size = 0;
  try {
    const files = unzipSync(archive, {
      filter: ({ name, size: packed, originalSize }) => {
        if (!wanted(name)) return false;
        if (isTooDense(packed, originalSize)) throw new BackupRefused(`This backup is damaged: ${name} says that it holds more than can be packed into it.`);
        if ((size += originalSize) > LIMITS.unpacked_bytes) throw new BackupRefused("Unpacked, this backup is larger than 2 GB.");
        return true;
      },
    });
    return new Map(Object.entries(files));
  } catch (cause) {
    if (cause instanceof BackupRefused) throw cause;
    throw new BackupRefused("This file is not a backup of Saltbench, or it is damaged: it cannot be unpacked.", { cause });
  }
}
