import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../../../electron/node/paths.ts';
import { icnsOf, icoOf } from '../../../packaging/iconFiles.ts';

// The containers are read by the layout of their formats: ICONDIR (Windows) and the icns block list (macOS).

const RESOURCES = resolve(ROOT, 'packaging/resources');
const read = (name: string): Buffer => readFileSync(resolve(RESOURCES, name));

const PNG_MARK = '89504e470d0a1a0a';
/** Width and height from a PNG's own header. */
function pngSize(png: Buffer): [number, number] {
  expect(png.subarray(0, 8).toString('hex')).toBe(PNG_MARK);
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

function picturesOfIco(ico: Buffer): { stated: number; png: Buffer }[] {
  expect([ico.readUInt16LE(0), ico.readUInt16LE(2)]).toEqual([0, 1]);
  return Array.from({ length: ico.readUInt16LE(4) }, (_, index) => {
    const at = 6 + 16 * index;
    const start = ico.readUInt32LE(at + 12);
    return { stated: ico.readUInt8(at) || 256, png: ico.subarray(start, start + ico.readUInt32LE(at + 8)) };
  });
}

function blocksOfIcns(icns: Buffer): { type: string; png: Buffer }[] {
  expect(icns.toString('latin1', 0, 4)).toBe('icns');
  expect(icns.readUInt32BE(4)).toBe(icns.length);
  const blocks: { type: string; png: Buffer }[] = [];
  for (let at = 8; at < icns.length; at += icns.readUInt32BE(at + 4)) {
    blocks.push({
      type: icns.toString('latin1', at, at + 4),
      png: icns.subarray(at + 8, at + icns.readUInt32BE(at + 4)),
    });
  }
  return blocks;
}

describe('icons', () => {
  it.each(['icon.ico', 'backstay.ico'])(
    '%s holds the sizes Windows shows, each a PNG of the size it states',
    (name) => {
      const pictures = picturesOfIco(read(name));
      expect(pictures.map(({ stated }) => stated)).toEqual([16, 24, 32, 48, 64, 128, 256]);
      for (const { stated, png } of pictures) expect(pngSize(png)).toEqual([stated, stated]);
      const last = pictures.at(-1)?.png;
      expect(last?.subarray(-8, -4).toString('latin1')).toBe('IEND');
    },
  );

  it.each(['icon.icns', 'backstay.icns'])('%s holds macOS sizes up to 1024 px', (name) => {
    const sizes = blocksOfIcns(read(name)).map(({ type, png }) => [type, ...pngSize(png)]);
    expect(sizes).toContainEqual(['ic07', 128, 128]);
    expect(sizes).toContainEqual(['ic09', 512, 512]);
    expect(sizes).toContainEqual(['ic10', 1024, 1024]);
    expect(sizes.length).toBe(8);
  });

  it('has each Linux size in the file that names it', () => {
    const names = readdirSync(resolve(RESOURCES, 'icons'));
    expect(names).toContain('512x512.png');
    for (const name of names) {
      const [width, height] = pngSize(read(`icons/${name}`));
      expect(`${width}x${height}.png`).toBe(name);
    }
  });

  it('refuses a picture a container cannot hold, and a size that is missing', () => {
    const png = read('icons/32x32.png');
    expect(() => icoOf([{ sizePx: 512, png }])).toThrow('up to 256 px, not 512');
    expect(() => icnsOf([{ sizePx: 32, png }])).toThrow('needs a picture of 64 px');
  });
});
