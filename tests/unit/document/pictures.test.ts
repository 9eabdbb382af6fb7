import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseProject, problemSentence } from '../../../core/document/load.ts';
import { pictureBytes, picturesToRead, splitPictures, withFoundPictures } from '../../../core/document/pictureFiles.ts';
import { sha256Hex } from '../../../core/document/pictureHash.ts';
import { base64Bytes, base64Of, bytesOfBase64, readPictureHeader } from '../../../core/document/pictureHeader.ts';
import { serialiseProject } from '../../../core/document/save.ts';
import {
  addPhoto,
  removePhoto,
  removeUnderlay,
  scaleUnderlay,
  setPhoto,
  setPicturesBeside,
  setUnderlay,
  setUnderlayPicture,
} from '../../../core/edit/pictures.ts';
import { removeSubjects } from '../../../core/edit/remove.ts';
import { PICTURE_BYTES, PICTURES_BYTES } from '../../../core/model/picture.ts';
import type { Project } from '../../../core/model/project.ts';
import { expectSound, frozen, refusal } from '../edit/support.ts';
import { smallBoat } from './boat.ts';

const boat = (): Project => frozen(smallBoat());

/** The id a picture has by its content, with the platform's own hash. */
const idOf = (bytes: Uint8Array): string => `picture-${createHash('sha256').update(bytes).digest('hex').slice(0, 16)}`;

/** A PNG of so many pixels, white; chunks as in the PNG specification (W3C), 5.3, with their check sums left at zero. */
function png(widthPx: number, heightPx: number): Uint8Array {
  const word = (value: number): number[] => [24, 16, 8, 0].map((shift) => (value >>> shift) & 255);
  const chunk = (type: string, data: readonly number[]): number[] => [
    ...word(data.length),
    ...[...type].map((letter) => letter.charCodeAt(0)),
    ...data,
    ...word(0),
  ];
  const header = [...word(widthPx), ...word(heightPx), 8, 0, 0, 0, 0];
  const data = [...deflateSync(new Uint8Array(64))];
  return new Uint8Array([
    0x89,
    0x50,
    0x4e,
    0x47,
    0x0d,
    0x0a,
    0x1a,
    0x0a,
    ...chunk('IHDR', header),
    ...chunk('IDAT', data),
  ]);
}

/** The start of a JPEG: an application segment first, as cameras write it, then the frame (ITU-T T.81, B.2.2). */
function jpeg(widthPx: number, heightPx: number, frame = 0xc0): Uint8Array {
  const word = (value: number): number[] => [(value >> 8) & 255, value & 255];
  const app = [0xff, 0xe1, ...word(20), ...new Array(18).fill(7)];
  return new Uint8Array([
    0xff,
    0xd8,
    ...app,
    0xff,
    frame,
    ...word(17),
    8,
    ...word(heightPx),
    ...word(widthPx),
    3,
    0,
    0,
    0,
  ]);
}

describe('the header of a picture', () => {
  it('gives kind and size of PNG and JPEG, progressive ones too', () => {
    expect(readPictureHeader(png(640, 70_000))).toEqual({ mime: 'image/png', widthPx: 640, heightPx: 70_000 });
    expect(readPictureHeader(jpeg(4000, 3000))).toEqual({ mime: 'image/jpeg', widthPx: 4000, heightPx: 3000 });
    expect(readPictureHeader(jpeg(12, 34, 0xc2))).toEqual({ mime: 'image/jpeg', widthPx: 12, heightPx: 34 });
  });

  it('knows nothing else: no SVG, no GIF, no text, nothing cut off', () => {
    const text = (words: string): Uint8Array => new TextEncoder().encode(words);
    for (const bytes of [
      text('<svg onload="alert(1)"/>'),
      text('GIF89a'),
      text(''),
      png(1, 1).slice(0, 10),
      jpeg(1, 1).slice(0, 20),
    ]) {
      expect(readPictureHeader(bytes)).toBeNull();
    }
  });

  it('never fails on any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.boolean(), (bytes, isJpeg) => {
        const start = isJpeg ? [0xff, 0xd8, 0xff] : [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
        const header = readPictureHeader(new Uint8Array([...start, ...bytes]));
        if (header) expect(header.widthPx * header.heightPx).toBeGreaterThan(0);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});

describe('base64 (RFC 4648, section 10 test vectors)', () => {
  it.each([
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foobar', 'Zm9vYmFy'],
  ])('%s is %s', (plain, coded) => {
    const bytes = new TextEncoder().encode(plain);
    expect(base64Of(bytes)).toBe(coded);
    expect(bytesOfBase64(coded)).toEqual(bytes);
    expect(base64Bytes(coded)).toBe(bytes.length);
  });

  it('goes there and back for any bytes, and agrees with the platform’s own', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const coded = base64Of(bytes);
        expect(coded).toBe(Buffer.from(bytes).toString('base64'));
        expect(bytesOfBase64(coded)).toEqual(bytes);
      }),
      { seed: 8 },
    );
  });
});

describe('the hash of a picture', () => {
  // Source: FIPS 180-4 examples (NIST, "SHA256.pdf"): one block and two.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of %s is that of the standard', (text, hash) => {
    expect(sha256Hex(new TextEncoder().encode(text))).toBe(hash);
  });

  it('agrees with the platform’s own at every length about a block, and for a large one', () => {
    for (const length of [...Array(200).keys(), 100_003]) {
      const bytes = Uint8Array.from({ length }, (_, i) => (i * 131 + length) & 255);
      expect(sha256Hex(bytes), `${length} bytes`).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });
});

describe('a picture under the drawing', () => {
  const laid = setUnderlayPicture(boat(), { name: 'side.png', bytes: png(1000, 600) });

  it('goes into the document and comes back', () => {
    const loaded = parseProject(serialiseProject(laid));
    if (!loaded.ok) throw new Error(loaded.problems.map(problemSentence).join(' '));
    expect(loaded.project).toEqual(laid);
  });

  it('is scaled by the boat’s two ends, whichever way she points', () => {
    const length = laid.boat.loaM;
    const right = scaleUnderlay(laid, { stem: { xPx: 900, yPx: 400 }, stern: { xPx: 100, yPx: 410 } }).underlay;
    expect(right).toMatchObject({ stemXPx: 900, waterlineYPx: 405, bow: 'right' });
    expect(right?.metresPerPx).toBeCloseTo(length / 800, 12);
    const left = scaleUnderlay(laid, { stem: { xPx: 100, yPx: 400 }, stern: { xPx: 500, yPx: 400 } }).underlay;
    expect(left).toMatchObject({ stemXPx: 100, bow: 'left' });
    expect(refusal(() => scaleUnderlay(laid, { stem: { xPx: 5, yPx: 0 }, stern: { xPx: 5, yPx: 0 } }))).toMatch(
      /too close/,
    );
  });

  it('another takes its place, and taking it away leaves nothing behind', () => {
    const again = setUnderlayPicture(laid, { name: 'other.png', bytes: png(10, 10) });
    expect(again.pictures?.map(({ name }) => name)).toEqual(['other.png']);
    expect(removeUnderlay(again)).toEqual(boat());
    expect(setUnderlay(laid, { strengthPercent: 70 }).underlay?.strengthPercent).toBe(70);
    expect(refusal(() => setUnderlay(boat(), { isShown: false }))).toMatch(/no picture/);
  });

  it('is refused where it is no picture, or too large, with what and how much', () => {
    const bytes = new TextEncoder().encode('<svg/>');
    expect(refusal(() => setUnderlayPicture(boat(), { name: 'a.svg', bytes }))).toBe(
      'a.svg is neither a PNG nor a JPEG picture: choose one of these.',
    );
    const large = new Uint8Array(PICTURE_BYTES + 1);
    large.set(png(10, 10));
    expect(refusal(() => setUnderlayPicture(boat(), { name: 'b.png', bytes: large }))).toMatch(
      /b\.png is 4\.0 MB; .* up to 4\.0 MB/,
    );
  });
});

describe('the id of a picture', () => {
  const [one, other] = [png(1000, 600), png(1000, 601)];
  const laid = (project: Project, bytes: Uint8Array): Project => setUnderlayPicture(project, { name: 'a.png', bytes });
  const idIn = (project: Project): string | undefined => project.pictures?.[0]?.id;

  it('is never used again for another content, so that its file is never written over with one', () => {
    const first = laid(boat(), one);
    const second = laid(removeUnderlay(first), other);
    expect([idIn(first), idIn(second)]).toEqual([idOf(one), idOf(other)]);
    expect(idIn(laid(first, other))).toBe(idOf(other));
    expect(idIn(laid(second, one))).toBe(idOf(one));
  });

  it('is one for equal pictures, which are kept once', () => {
    const [item] = boat().items;
    const both = addPhoto(laid(boat(), one), {
      name: 'again.png',
      bytes: one,
      subject: { kind: 'item', id: item?.id ?? '' },
      caption: '',
      date: null,
    });
    expect(both.pictures?.map(({ name }) => name)).toEqual(['a.png']);
    expect(both.photos?.[0]?.pictureId).toBe(both.underlay?.pictureId);
    expectSound(both);
    const without = removeUnderlay(both);
    expect(without.pictures).toHaveLength(1);
    expectSound(laid(laid(boat(), one), one));
  });

  it('brings one back that was not found beside the document', () => {
    const { project } = splitPictures(setPicturesBeside(laid(boat(), one), true));
    expect(project.pictures?.[0]?.base64).toBeUndefined();
    expect(laid(project, one).pictures).toEqual(laid(boat(), one).pictures);
  });
});

describe('photos', () => {
  const [item] = boat().items;
  const subject = { kind: 'item' as const, id: item?.id ?? '' };
  const taken = addPhoto(boat(), { name: 'j1.jpg', bytes: jpeg(8, 8), subject, caption: 'Plug', date: '2031-05-02' });

  it('are added, worded anew, and taken out with their picture', () => {
    expect(taken.photos).toEqual([
      { id: 'photo-1', pictureId: idOf(jpeg(8, 8)), subject, caption: 'Plug', date: '2031-05-02' },
    ]);
    expect(setPhoto(taken, 'photo-1', { caption: 'Wet plug' }).photos?.[0]?.caption).toBe('Wet plug');
    expect(removePhoto(taken, 'photo-1')).toEqual(boat());
  });

  it('go with what they show', () => {
    const without = removeSubjects(taken, [subject]);
    expect(without.photos).toBeUndefined();
    expect(without.pictures).toBeUndefined();
  });
});

describe('a file whose pictures are not what they say', () => {
  const laid = setUnderlayPicture(boat(), { name: 'side.png', bytes: png(1000, 600) });
  const [picture] = laid.pictures ?? [];
  if (!picture) throw new Error('No picture');
  const sentences = (project: object): string => {
    const loaded = parseProject(`${JSON.stringify(project)}\n`);
    return loaded.ok ? '' : loaded.problems.map(problemSentence).join(' ');
  };

  it.each([
    [
      'another size',
      { ...laid, pictures: [{ ...picture, widthPx: 10 }] },
      /says image\/png, 10 by 600; the picture itself is image\/png, 1000 by 600/,
    ],
    [
      'a script',
      { ...laid, pictures: [{ ...picture, base64: base64Of(new TextEncoder().encode('<svg onload=x>')) }] },
      /neither a PNG nor a JPEG/,
    ],
    ['SVG by name', { ...laid, pictures: [{ ...picture, mime: 'image/svg+xml' }] }, /mime/i],
    ['letters that are no base64', { ...laid, pictures: [{ ...picture, base64: '"><script>' }] }, /base64/],
    ['a picture cut off', { ...laid, pictures: [{ ...picture, base64: picture.base64?.slice(0, 41) }] }, /cut off/],
    [
      'a picture that is not there',
      { ...laid, underlay: { ...laid.underlay, pictureId: 'x' } },
      /There is no picture "x"/,
    ],
  ])('is refused: %s', (_, project, expected) => {
    expect(sentences(project)).toMatch(expected);
  });

  it.each(['', '../ketch', 'a/b', 'a b', 'a.png', 'mât', 'a\0', 'x'.repeat(65)])('is refused: the id %j', (id) => {
    const project = { ...laid, pictures: [{ ...picture, id }], underlay: { ...laid.underlay, pictureId: id } };
    expect(sentences(project)).toMatch(
      /The id of a picture is also the name of its file\. Use up to 64 letters, digits and hyphens\./,
    );
  });

  it('is refused: two ids that are one but for capitals, beside the document or in it', () => {
    const pictures = [picture, { ...picture, id: picture.id.toUpperCase() }];
    for (const picturesBeside of [true, undefined]) {
      expect(sentences({ ...laid, pictures, picturesBeside })).toMatch(
        /is that of another picture, .* but for capitals/,
      );
    }
    expect(sentences({ ...laid, pictures: [picture, { ...picture, id: 'side-2' }] })).toBe('');
  });

  it('is refused when its header is too far in, and so is the picture when it is put in', () => {
    const [start, end] = [jpeg(8, 8).slice(0, 2), jpeg(8, 8).slice(2)];
    const segment = new Uint8Array(65_002).fill(7);
    segment.set([0xff, 0xe1, 0xfd, 0xe8]);
    const far = new Uint8Array([...start, ...[1, 2, 3, 4, 5].flatMap(() => [...segment]), ...end]);
    expect(readPictureHeader(far)).toEqual({ mime: 'image/jpeg', widthPx: 8, heightPx: 8 });
    expect(refusal(() => setUnderlayPicture(boat(), { name: 'far.jpg', bytes: far }))).toMatch(/neither/);
    const entry = { ...picture, mime: 'image/jpeg' as const, widthPx: 8, heightPx: 8 };
    expect(sentences({ ...laid, pictures: [{ ...entry, base64: base64Of(far) }] })).toMatch(/neither/);
    const { base64: _none, ...bare } = entry;
    const beside: Project = { ...laid, picturesBeside: true, pictures: [bare] };
    expect(withFoundPictures(beside, new Map([[`${bare.id}.jpg`, far]])).missing).toEqual(['side.png']);
  });
});

describe('pictures beside the document', () => {
  const inside = setUnderlayPicture(boat(), { name: 'side.png', bytes: png(1000, 600) });
  const beside = setPicturesBeside(inside, true);

  it('are split off for writing and found again, byte for byte', () => {
    const { project, files } = splitPictures(beside);
    expect(serialiseProject(project)).not.toContain('base64');
    expect(files).toEqual([{ fileName: `${idOf(png(1000, 600))}.png`, bytes: png(1000, 600) }]);
    const loaded = parseProject(serialiseProject(project));
    if (!loaded.ok) throw new Error(loaded.problems.map(problemSentence).join(' '));
    expect(picturesToRead(loaded.project).map(({ id }) => id)).toEqual([idOf(png(1000, 600))]);
    const found = new Map(files.map(({ fileName, bytes }) => [fileName, bytes]));
    expect(withFoundPictures(loaded.project, found)).toEqual({ project: beside, missing: [] });
  });

  it('that are not there, or are another picture, keep their entry and are named', () => {
    const { project } = splitPictures(beside);
    for (const found of [new Map<string, Uint8Array>(), new Map([[`${idOf(png(1000, 600))}.png`, png(5, 5)]])]) {
      const read = withFoundPictures(project, found);
      expect(read.missing).toEqual(['side.png']);
      expect(read.project.pictures).toEqual(project.pictures);
    }
    expect(refusal(() => setPicturesBeside(project, false))).toMatch(/^side\.png could not be found/);
  });

  it('count towards what all pictures together may be: what goes over is as good as not found', () => {
    const large = (n: number): Uint8Array => {
      const bytes = new Uint8Array(PICTURE_BYTES);
      bytes.set(png(1000, 600 + n));
      return bytes;
    };
    const files = [0, 1, 2, 3, 4, 5, 6].map((n) => ({
      id: `p${n}`,
      name: `p${n}.png`,
      heightPx: 600 + n,
      bytes: large(n),
    }));
    const pictures = files.map(({ bytes: _bytes, ...rest }) => ({
      ...rest,
      mime: 'image/png' as const,
      widthPx: 1000,
    }));
    const project: Project = { ...boat(), picturesBeside: true, pictures };
    const found = new Map(files.map(({ id, bytes }) => [`${id}.png`, bytes]));
    const read = withFoundPictures(project, found);
    expect(read.missing).toEqual(['p6.png']);
    expect(pictureBytes(read.project)).toBe(24_000_000);
    expect(pictureBytes(read.project)).toBeLessThanOrEqual(PICTURES_BYTES);
    // One that was there before counts too.
    const [first, ...others] = read.project.pictures ?? [];
    const again = withFoundPictures({ ...project, pictures: [...pictures.slice(1), ...(first ? [first] : [])] }, found);
    expect(again.missing).toEqual(['p6.png']);
    expect(others).toHaveLength(6);
    // However more came to be in it, it does not go back into a document that could not be read again.
    const over = { ...read.project, pictures: [...(read.project.pictures ?? []).slice(0, 6), { ...first, id: 'p7' }] };
    expect(refusal(() => setPicturesBeside(over as Project, false))).toBe(
      'All pictures together are 28.0 MB; up to 25.0 MB fit in a document. Take some out first.',
    );
  });

  it('go back into the document, and travel in it where that was never asked', () => {
    expect(setPicturesBeside(beside, false)).toEqual(inside);
    expect(splitPictures(inside)).toEqual({ project: inside, files: [] });
    expect(removeUnderlay(beside)).toEqual(boat());
  });
});
