import type { Picture } from '../model/picture.ts';

/** What a picture says of itself in its first bytes. */
export type PictureHeader = Pick<Picture, 'mime' | 'widthPx' | 'heightPx'>;

/**
 * How far into a picture its header is looked for, bytes, wherever one is taken into a document or read from one, so that what
 * was taken in is also read again. The data a camera writes before the frame of a JPEG are gone by then.
 */
export const HEADER_BYTES = 300_000;

/** The header of a picture as a document holds it. Null where it is none, or has its header too far in. */
export const headerToKeep = (bytes: Uint8Array): PictureHeader | null =>
  readPictureHeader(bytes.subarray(0, HEADER_BYTES));

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Markers of a JPEG frame: baseline, extended and progressive, and their kin; not DHT, JPG and DAC among them. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

/**
 * Kind and size of a PNG or JPEG by its own header, so that nothing need be decoded to know that it is too large. Null for
 * anything else, SVG and broken headers included.
 * Source: PNG specification (W3C), 11.2.2 IHDR; ITU-T T.81, B.2.2 frame header.
 */
export function readPictureHeader(bytes: Uint8Array): PictureHeader | null {
  if (PNG.every((byte, index) => bytes[index] === byte)) return pngHeader(bytes);
  return bytes[0] === 0xff && bytes[1] === 0xd8 ? jpegHeader(bytes) : null;
}

function pngHeader(bytes: Uint8Array): PictureHeader | null {
  const isIhdr = [0x49, 0x48, 0x44, 0x52].every((byte, index) => bytes[12 + index] === byte);
  return isIhdr
    ? sized('image/png', wordAt(bytes, 16) * 65536 + wordAt(bytes, 18), wordAt(bytes, 20) * 65536 + wordAt(bytes, 22))
    : null;
}

/** Goes from marker to marker by their stated lengths up to the frame. */
function jpegHeader(bytes: Uint8Array): PictureHeader | null {
  let at = 2;
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
    } else if (isFrame(marker)) {
      return sized('image/jpeg', wordAt(bytes, at + 7), wordAt(bytes, at + 5));
    } else {
      const length = wordAt(bytes, at + 2);
      if (length < 2) return null;
      at += 2 + length;
    }
  }
  return null;
}

const wordAt = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);

const sized = (mime: Picture['mime'], widthPx: number, heightPx: number): PictureHeader | null =>
  widthPx > 0 && heightPx > 0 ? { mime, widthPx, heightPx } : null;

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const VALUES = new Uint8Array(128);
for (let i = 0; i < LETTERS.length; i++) VALUES[LETTERS.charCodeAt(i)] = i;
const CODES = Uint8Array.from(LETTERS, (letter) => letter.charCodeAt(0));

/** Number of bytes a base64 text stands for. */
export function base64Bytes(base64: string): number {
  const padding = base64.endsWith('==') ? 2 : base64.endsWith('=') ? 1 : 0;
  return (base64.length / 4) * 3 - padding;
}

/** The bytes of a base64 text, all or the first of them. The text must be sound base64. */
export function bytesOfBase64(base64: string, most = Number.POSITIVE_INFINITY): Uint8Array {
  const bytes = new Uint8Array(Math.min(Math.floor(base64Bytes(base64)), most));
  for (let at = 0, i = 0; at < bytes.length; at += 3, i += 4) {
    const [a, b, c, d] = [0, 1, 2, 3].map((offset) => VALUES[base64.charCodeAt(i + offset) & 127] ?? 0) as [
      number,
      number,
      number,
      number,
    ];
    const group = (a << 18) | (b << 12) | (c << 6) | d;
    bytes[at] = group >> 16;
    if (at + 1 < bytes.length) bytes[at + 1] = (group >> 8) & 255;
    if (at + 2 < bytes.length) bytes[at + 2] = group & 255;
  }
  return bytes;
}

/** Letters made into text at a time, which is as many as every engine takes as arguments of one call. */
const PIECE = 8192;

/** Bytes as base64. Letters are put as their codes into one array first: a picture has millions, too many for texts each. */
export function base64Of(bytes: Uint8Array): string {
  const codes = new Uint8Array(Math.ceil(bytes.length / 3) * 4);
  for (let at = 0, i = 0; at < bytes.length; at += 3, i += 4) {
    const group = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    codes[i] = CODES[group >> 18] ?? 0;
    codes[i + 1] = CODES[(group >> 12) & 63] ?? 0;
    codes[i + 2] = CODES[(group >> 6) & 63] ?? 0;
    codes[i + 3] = CODES[group & 63] ?? 0;
  }
  codes.fill('='.charCodeAt(0), codes.length - ((3 - (bytes.length % 3)) % 3));
  const pieces: string[] = [];
  for (let at = 0; at < codes.length; at += PIECE) {
    pieces.push(Reflect.apply(String.fromCharCode, null, codes.subarray(at, at + PIECE)));
  }
  return pieces.join('');
}
