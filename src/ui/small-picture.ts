/** Longest side in pixels, and quality: what a part looks like stays clear, and a photo takes about 100 kB. */
const LONGEST = 1280, QUALITY = 0.7;

/**
 * A photo made small, upright, as JPEG; where and with what it was taken is not in it any more.
 *
 * @throws {Error} with a sentence for the owner when the file is no picture that this browser can read
 */
export async function smallPicture(file: Blob): Promise<Uint8Array<ArrayBuffer>> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch (cause) {
    throw new Error("This file is no picture that this browser can read.", { cause });
  }
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height)), canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
  if (!blob) throw new Error("This picture could not be made small enough to keep.");
  return new Uint8Array(await blob.arrayBuffer());
}
