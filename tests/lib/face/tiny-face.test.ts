import { describe, expect, it } from 'vitest';
import { buildPack, inspectFace } from '@/lib/face/build-pack';
import { makeWoff } from '../../fixtures/faces/face-bytes';
import { composite, GLYPH, tinyFace, words } from '../../fixtures/faces/tiny-face';

/** Expected values: arithmetic by hand on the face in tests/fixtures/faces/tiny-face.ts. */
const file = (bytes: Uint8Array) => ({ kind: 'file', bytes }) as const;

describe('a face made by hand', () => {
  it('gives back its advances, outlines and word space', async () => {
    const pack = await buildPack(file(tinyFace()), 'AV A');
    expect(pack.unitsPerEm).toBe(1000);
    expect(pack.glyphs).toEqual([
      { cluster: 'A', advance: 600, path: 'M100 0L100 700L500 700L500 0L100 0Z' },
      { cluster: 'V', advance: 600, path: 'M50 0L50 700L550 700L550 0L50 0Z' },
    ]);
    expect(pack.letters).toEqual([0, 1, 0]);
    expect(pack.wordSpace).toEqual([0, 250]);
    expect(pack.builtIn).toEqual([0, 0]);
    expect(pack.control).toEqual({ H: null, O: null, n: null, o: null });
  });

  it('applies a legacy kern table, with the space too', async () => {
    const kern: [number, number, number][] = [
      [GLYPH.A, GLYPH.V, -80],
      [GLYPH.V, GLYPH.space, -30],
      [GLYPH.space, GLYPH.A, 7],
    ];
    const pack = await buildPack(file(tinyFace({ kern })), 'AV A');
    expect(pack.builtIn).toEqual([-80, -23]);
    expect(pack.wordSpace).toEqual([0, 250]);
    expect((await inspectFace(file(tinyFace({ kern })))).kerning).toBe('kern');
  });

  it('is the same face as WOFF', async () => {
    expect(await buildPack(file(makeWoff(tinyFace())), 'AVA')).toEqual(await buildPack(file(tinyFace()), 'AVA'));
  });

  it('is found in a collection by its number (TTC header, version 1.0)', async () => {
    const kern: [number, number, number][] = [[GLYPH.A, GLYPH.V, -80]];
    const bytes = collection([tinyFace({ unitsPerEm: 2000 }), tinyFace({ kern })]);
    expect((await buildPack({ kind: 'file', bytes }, 'AV')).unitsPerEm).toBe(2000);
    expect(await buildPack({ kind: 'file', bytes, index: 1 }, 'AV')).toEqual(
      await buildPack(file(tinyFace({ kern })), 'AV'),
    );
    await expect(buildPack({ kind: 'file', bytes, index: 2 }, 'AV')).rejects.toThrow(
      '2 faces, numbered from 0, so there is no face number 2',
    );
  });

  it('draws a composite glyph with all its parts', async () => {
    const pack = await buildPack(file(tinyFace({ glyphA: composite([GLYPH.V, GLYPH.notdef]) })), 'A');
    // The first part is moved so that its left edge meets the left bearing of A, 100: no flag says otherwise (OpenType,
    // `hmtx`).
    expect(pack.glyphs[0]?.path.match(/M/g)).toHaveLength(2);
  });

  it('says what it is', async () => {
    const facts = await inspectFace(file(tinyFace()));
    expect(facts).toMatchObject({
      weight: 400,
      italic: false,
      italicAngle: 0,
      outlines: 'TrueType',
      kerning: 'none',
      opticalSize: null,
      axes: [],
      sumHolds: true,
    });
    expect(facts.coverage).toEqual([
      [0x20, 0x20],
      [0x41, 0x41],
      [0x56, 0x56],
    ]);
    expect(facts.vertical).toMatchObject({ ascender: 800, descender: -200, capHeight: null, xHeight: null });
  });
});

/** Faces one after the other, the offsets of their tables moved. */
function collection(faces: Uint8Array[]): Uint8Array {
  const starts = faces.map(
    (_, index) => 12 + 4 * faces.length + faces.slice(0, index).reduce((sum, face) => sum + face.length, 0),
  );
  const bytes = new Uint8Array(
    Buffer.concat([
      Buffer.from('ttcf'),
      words([1, 0, 0, faces.length, ...starts.flatMap((start) => [0, start])]),
      ...faces,
    ]),
  );
  const view = new DataView(bytes.buffer);
  for (const start of starts) {
    for (let table = 0; table < view.getUint16(start + 4); table++) {
      const at = start + 12 + 16 * table + 8;
      view.setUint32(at, view.getUint32(at) + start);
    }
  }
  return bytes;
}
