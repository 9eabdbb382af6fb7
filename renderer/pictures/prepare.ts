import { readPictureHeader } from '../../core/document/pictureHeader.ts';
import type { NewPicture } from '../../core/edit/pictures.ts';
import { PICTURE_SIDE_PX } from '../../core/model/picture.ts';

/** Largest file looked at, bytes, and most pixels decoded: a few bytes can claim to be a picture of a gigapixel. */
const MOST_FILE_BYTES = 60_000_000;
const MOST_PIXELS = 120_000_000;
const JPEG_QUALITY = 0.85;

/**
 * A file of the user's as a picture for the document: drawn anew at up to 2400 px on its long side, so that only pixels are
 * kept, and nothing a camera or program wrote beside them (place, owner, scripts).
 * @throws Error with a sentence for what is no PNG or JPEG, or too large to be decoded
 */
export async function preparedPicture(file: File): Promise<NewPicture> {
  if (file.size > MOST_FILE_BYTES) {
    throw new Error(
      `${file.name} is ${Math.round(file.size / 1e6)} MB; pictures are read up to ${MOST_FILE_BYTES / 1e6} MB.`,
    );
  }
  const header = readPictureHeader(new Uint8Array(await file.arrayBuffer()));
  if (!header) throw new Error(`${file.name} is neither a PNG nor a JPEG picture: choose one of these.`);
  const { mime, widthPx, heightPx } = header;
  if (widthPx * heightPx > MOST_PIXELS) {
    throw new Error(
      `${file.name} says it is ${widthPx} by ${heightPx} pixels, more than is decoded here: make it smaller.`,
    );
  }
  const bitmap = await createImageBitmap(file).catch(() => {
    throw new Error(`${file.name} could not be read as a picture: it may be damaged.`);
  });
  const share = Math.min(1, PICTURE_SIDE_PX / Math.max(bitmap.width, bitmap.height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(bitmap.width * share)),
    Math.max(1, Math.round(bitmap.height * share)),
  );
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  const blob = await canvas.convertToBlob({ type: mime, quality: JPEG_QUALITY });
  return { name: file.name, bytes: new Uint8Array(await blob.arrayBuffer()) };
}
