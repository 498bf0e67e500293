import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { buildPack, buildPairs, inspectFace } from '@/lib/face/build-pack';
import { listFaces } from '@/lib/face/catalogue';
import { readFace } from '@/lib/face/read-face';
import agreedFiles from '@/lib/face/agreed-files.json';
import { compareReaders, fileHash } from '@/lib/face/second-reader';
import { withTables } from '../../fixtures/faces/face-bytes';
import { box, GLYPH, tinyFace, words } from '../../fixtures/faces/tiny-face';

/**
 * Expected values: arithmetic by hand on the face in tests/fixtures/faces/tiny-face.ts (A is 100 to 500, V is 50 to
 * 550).
 */
const agreed: Record<string, number> = agreedFiles;
const file = (bytes: Uint8Array) => ({ kind: 'file', bytes }) as const;

describe('a face whose readers disagree', () => {
  /** Two lists of letters: by the older, of platform 3, A is the glyph of V. Readers prefer one or the other. */
  const twoLists = withTables(tinyFace(), {
    cmap: cmap([
      [
        0,
        4,
        format12([
          [0x41, GLYPH.A],
          [0x56, GLYPH.V],
        ]),
      ],
      [
        3,
        1,
        format4([
          [0x41, GLYPH.V],
          [0x56, GLYPH.V],
        ]),
      ],
    ]),
  });

  it.each([
    ['a pack', () => buildPack(file(twoLists), 'AV')],
    ['pairs', () => buildPairs(file(twoLists), ['AV'])],
    ['its facts', () => inspectFace(file(twoLists))],
  ])('is refused with both figures when asked for %s, each time', async (_, ask) => {
    for (const _time of [1, 2])
      await expect(ask()).rejects.toMatchObject({
        code: 'readers-disagree',
        message: expect.stringMatching(/left edge of “A” \(U\+0041\) is at 100, by the other 50\./),
      });
  });

  /** One face is shown to the first reader and another to the second. */
  const compare = async (first: Uint8Array, second: Uint8Array) => {
    const { harfbuzz, font } = await readFace(first);
    return compareReaders(harfbuzz, font.face, (await readFace(second)).tables);
  };
  const withA = (left: number, bottom: number, right: number, top: number) =>
    tinyFace({ glyphA: box(left, bottom, right, top) });
  const withAdvance = (advance: number) =>
    withTables(tinyFace(), { hmtx: words([500, 0, advance, 100, 600, 50, 250, 0]) });

  it.each([
    ['units per em', tinyFace({ unitsPerEm: 1002 }), 'an em has 1000 units, by the other 1002'],
    ['an advance', withAdvance(602), 'the advance of “A” (U+0041) is 600, by the other 602'],
    [
      'a left edge',
      withTables(withA(98, 0, 500, 700), { hmtx: words([500, 0, 600, 98, 600, 50, 250, 0]) }),
      'the left edge of “A” (U+0041) is at 100, by the other 98',
    ],
    ['a lower edge', withA(100, -2, 500, 700), 'the lower edge of “A” (U+0041) is at 0, by the other -2'],
    ['a right edge', withA(100, 0, 502, 700), 'the right edge of “A” (U+0041) is at 500, by the other 502'],
    ['an upper edge', withA(100, 0, 500, 702), 'the upper edge of “A” (U+0041) is at 700, by the other 702'],
    ['an outline', tinyFace({ glyphA: new Uint8Array() }), '“A” (U+0041) is drawn, by the other is empty'],
  ])('differs by two units in %s', async (_, other, said) => {
    await expect(compare(tinyFace(), other)).rejects.toThrow(said);
  });

  it('may differ by one unit, which is rounding', async () => {
    expect(await compare(tinyFace(), withA(100, -1, 501, 701))).toEqual({ letters: 2, unchecked: null });
    expect(await compare(tinyFace(), withAdvance(601))).toEqual({ letters: 2, unchecked: null });
  });
});

describe('a face whose readers agree', () => {
  it('says how many letters were compared', async () => {
    expect((await inspectFace(file(tinyFace()))).secondReading).toEqual({ letters: 2, unchecked: null });
  });

  it('may have outlines that do not begin at their side bearing: both move them there (OpenType, `hmtx`)', async () => {
    const moved = withTables(tinyFace(), { hmtx: words([500, 0, 600, 130, 600, 50, 250, 0]) });
    expect((await buildPack(file(moved), 'A')).glyphs[0]?.path).toBe('M130 0L130 700L530 700L530 0L130 0Z');
  });

  it('is every installed file, by the list that `npm run check-faces` writes', () => {
    const missing = listFaces().filter(({ path }) => !(fileHash(readFileSync(path)) in agreedFiles));
    expect(missing.map(({ key }) => key)).toEqual([]);
  });

  it('is one of every family, upright or italic, read anew', async () => {
    const families = new Map(listFaces().map((face) => [face.family, face]));
    for (const { key, path } of families.values()) {
      const bytes = readFileSync(path);
      const { harfbuzz, font, tables } = await readFace(bytes);
      const reading = compareReaders(harfbuzz, font.face, tables);
      expect(reading, key).toEqual({ letters: agreed[fileHash(bytes)], unchecked: null });
    }
  }, 120_000);

  it('may have CFF outlines', async () => {
    const bytes = readFileSync('node_modules/source-sans-pro/OTF/SourceSansPro-Regular.otf');
    expect((await inspectFace(file(bytes))).secondReading).toEqual({ letters: 1059, unchecked: null });
  });
});

describe('what the second reader does not know', () => {
  /** Format 10 is in the specification, and opentype.js does not read it. */
  const trimmed = withTables(tinyFace(), { cmap: cmap([[3, 10, format10(0x41, [GLYPH.A, GLYPH.V])]]) });

  it('refuses nothing, and is said with the reason', async () => {
    expect((await buildPack(file(trimmed), 'AB')).glyphs).toHaveLength(2);
    expect((await inspectFace(file(trimmed))).secondReading).toEqual({
      letters: 0,
      unchecked: expect.stringMatching(/^The second reader can't open this face \(.*format.*\)\.$/i),
    });
  });

  it('is a variable face away from the usual values of its axes', async () => {
    const source = { kind: 'catalogue', key: 'source-serif-4-opsz', axes: { opsz: 60, wght: 400 } } as const;
    const { secondReading } = await inspectFace(source);
    expect(secondReading.letters).toBeGreaterThan(100);
    expect(secondReading.unchecked).toBe(
      'Only the usual setting of this variable face was compared (opsz is 60, usually 20).',
    );
  });
});

type Encoding = [platform: number, encoding: number, subtable: Uint8Array];

/** OpenType specification, `cmap`: header, then the subtables one after the other. */
function cmap(encodings: Encoding[]): Uint8Array {
  let at = 4 + 8 * encodings.length;
  const records = encodings.flatMap(([platform, encoding, subtable]) => {
    const record = [platform, encoding, at >>> 16, at & 0xffff];
    at += subtable.byteLength;
    return record;
  });
  return new Uint8Array(
    Buffer.concat([words([0, encodings.length, ...records]), ...encodings.map(([, , one]) => one)]),
  );
}

const long = (value: number) => [value >>> 16, value & 0xffff];

function format12(letters: [number, number][]): Uint8Array {
  const groups = letters.flatMap(([point, glyph]) => [...long(point), ...long(point), ...long(glyph)]);
  return words([12, 0, ...long(16 + 2 * groups.length), ...long(0), ...long(letters.length), ...groups]);
}

function format4(letters: [number, number][]): Uint8Array {
  const segments = [...letters, [0xffff, 0] as [number, number]];
  const points = segments.map(([point]) => point);
  const deltas = segments.map(([point, glyph]) => (point === 0xffff ? 1 : glyph - point));
  const length = 16 + 8 * segments.length;
  return words([
    4,
    length,
    0,
    2 * segments.length,
    0,
    0,
    0,
    ...points,
    0,
    ...points,
    ...deltas,
    ...segments.map(() => 0),
  ]);
}

function format10(first: number, glyphs: number[]): Uint8Array {
  return words([10, 0, ...long(20 + 2 * glyphs.length), ...long(0), ...long(first), ...long(glyphs.length), ...glyphs]);
}
