/** One picture of an icon: a square PNG. */
export interface IconPicture {
  readonly sizePx: number;
  readonly png: Buffer;
}

const ICO_HEADER_BYTES = 6;
const ICO_ENTRY_BYTES = 16;

/**
 * A Windows icon of PNG pictures (understood since Windows Vista), smallest first.
 * @param pictures sizes 1 to 256 px
 * @throws RangeError for a picture larger than the format knows
 */
export function icoOf(pictures: readonly IconPicture[]): Buffer {
  const header = Buffer.alloc(ICO_HEADER_BYTES + ICO_ENTRY_BYTES * pictures.length);
  header.writeUInt16LE(1, 2); // an icon, not a cursor
  header.writeUInt16LE(pictures.length, 4);
  let offset = header.length;
  for (const [index, { sizePx, png }] of pictures.entries()) {
    if (sizePx > 256) throw new RangeError(`a Windows icon holds pictures up to 256 px, not ${sizePx}`);
    const at = ICO_HEADER_BYTES + ICO_ENTRY_BYTES * index;
    header.writeUInt8(sizePx % 256, at); // 0 stands for 256
    header.writeUInt8(sizePx % 256, at + 1);
    header.writeUInt16LE(1, at + 4); // colour planes
    header.writeUInt16LE(32, at + 6); // bits a pixel
    header.writeUInt32LE(png.length, at + 8);
    header.writeUInt32LE(offset, at + 12);
    offset += png.length;
  }
  return Buffer.concat([header, ...pictures.map(({ png }) => png)]);
}

/** Types of macOS's icon file that hold PNG, with the pixels of each; the same picture may stand under two. From memory. */
const ICNS_TYPES: readonly (readonly [string, number])[] = [
  ['ic11', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic13', 256],
  ['ic08', 256],
  ['ic14', 512],
  ['ic09', 512],
  ['ic10', 1024],
];

/**
 * A macOS icon of PNG pictures.
 * @param pictures must hold 32, 64, 128, 256, 512 and 1024 px
 * @throws RangeError naming a size that is missing
 */
export function icnsOf(pictures: readonly IconPicture[]): Buffer {
  const blocks = ICNS_TYPES.map(([type, sizePx]) => {
    const picture = pictures.find((candidate) => candidate.sizePx === sizePx);
    if (picture === undefined) throw new RangeError(`a macOS icon needs a picture of ${sizePx} px`);
    return block(type, picture.png);
  });
  return block('icns', Buffer.concat(blocks));
}

function block(type: string, content: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 'latin1');
  head.writeUInt32BE(content.length + head.length, 4);
  return Buffer.concat([head, content]);
}
