import { readFileSync } from 'node:fs';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildPack, inspectFace } from '@/lib/face/build-pack';
import { findFace } from '@/lib/face/catalogue';
import { FaceError, type FaceErrorCode } from '@/lib/face/face-error';
import { capWasmMemory } from '@/lib/face/processes/cap-wasm-memory';
import { inFaceProcess, startFaceProcesses } from '@/lib/face/processes/pool';
import { makeSfnt, makeWoff, sfntOf, tableOf, tablesOf, withTables } from '../../fixtures/faces/face-bytes';
import { box, composite, GLYPH, tinyFace, words } from '../../fixtures/faces/tiny-face';

/** Every refusal is a FaceError with its code, quotes what was wrong, and is quick. */
async function refusal(
  bytes: Uint8Array,
  text = 'A',
  options: object = {},
): Promise<{ code: FaceErrorCode; message: string }> {
  const begun = performance.now();
  const answer = await buildPack({ kind: 'file', bytes, ...options }, text).then(
    (pack) => {
      throw new Error(`It gave a pack: ${JSON.stringify(pack).slice(0, 200)}`);
    },
    (error: unknown) => error,
  );
  expect(performance.now() - begun).toBeLessThan(10_000);
  expect(answer).toBeInstanceOf(FaceError);
  return answer as FaceError;
}

let lato: Uint8Array;
beforeAll(async () => {
  await startFaceProcesses();
  lato = await sfntOf('lato-400');
});

describe('files that are no face', () => {
  it.each<[string, Uint8Array, FaceErrorCode, string]>([
    ['empty', new Uint8Array(), 'not-a-face', 'empty'],
    ['one byte', new Uint8Array([0]), 'not-a-face', '00'],
    ['PNG', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), 'not-a-face', '89 50 4e 47'],
    ['ZIP', Buffer.from('PK\u0003\u0004 some archive'), 'not-a-face', '50 4b 03 04'],
    ['HTML', Buffer.from('<!doctype html><title>not found</title>'), 'not-a-face', '3c 21 64 6f'],
    ['gzip', gzipSync('a face'), 'not-a-face', '1f 8b'],
    ['too large', Object.assign(new Uint8Array(8 * 1024 * 1024 + 1), { 1: 1 }), 'too-large', '8.0 MB'],
    ['signature alone', new Uint8Array([0, 1, 0, 0]), 'damaged', 'list of tables'],
    ['no tables', new Uint8Array([0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]), 'damaged', '0 tables'],
    ['WOFF signature alone', Buffer.from('wOFF'), 'damaged', 'header'],
    ['WOFF2 signature alone', Buffer.from('wOF2'), 'damaged', 'header'],
    ['a list without what a face needs', makeSfnt([['name', words([0, 0, 6])]]), 'not-a-face', 'head'],
  ])('%s', async (_, bytes, code, says) => {
    const error = await refusal(bytes);
    expect(error.code).toBe(code);
    expect(error.message).toContain(says);
  });
});

describe('faces that are damaged', () => {
  it('quotes the table that ends outside the file', async () => {
    const error = await refusal(lato.subarray(0, lato.length / 2));
    expect(error).toMatchObject({
      code: 'damaged',
      message: expect.stringMatching(/ends at byte \d+, but the file has \d+/),
    });
  });

  it('notices a changed bit by the checksum', async () => {
    const { offset } = tablesOf(lato).find((table) => table.tag === 'hmtx')!;
    const changed = lato.slice();
    changed[offset + 101] = changed[offset + 101]! ^ 16;
    expect(await refusal(changed)).toMatchObject({
      code: 'damaged',
      message: expect.stringContaining('“hmtx” does not agree with its own checksum'),
    });
  });

  it.each([0, 1, 15, 16_385, 65_535])('refuses an em of %i units', async (unitsPerEm) => {
    expect(await refusal(tinyFace({ unitsPerEm }))).toMatchObject({
      code: 'damaged',
      message: expect.stringContaining(`${unitsPerEm} units`),
    });
  });

  it.each([16, 16_384])('takes an em of %i units', async (unitsPerEm) => {
    expect((await buildPack({ kind: 'file', bytes: tinyFace({ unitsPerEm }) }, 'A')).unitsPerEm).toBe(unitsPerEm);
  });

  it('refuses advances that are cut short', async () => {
    expect(await refusal(tinyFace({ shortBy: 2 }))).toMatchObject({
      code: 'damaged',
      message: expect.stringContaining('hmtx'),
    });
  });

  it('refuses outlines whose places run backwards', async () => {
    const loca = tableOf(lato, 'loca');
    loca.set([0xff, 0xff], 6);
    expect(await refusal(withTables(lato, { loca }))).toMatchObject({
      code: 'damaged',
      message: expect.stringContaining('loca'),
    });
  });

  it('refuses a face without outlines', async () => {
    expect(await refusal(withTables(lato, { glyf: null, loca: null }))).toMatchObject({
      code: 'unsupported',
      message: expect.stringContaining('no outlines'),
    });
  });
});

describe('letters that can’t be drawn', () => {
  it.each<[string, Uint8Array, Uint8Array[], string]>([
    ['a part of itself', composite([GLYPH.A]), [], 'part of itself'],
    ['a circle of two', composite([4]), [composite([GLYPH.A])], 'part of itself'],
    [
      'parts nested too deep',
      composite([4]),
      Array.from({ length: 12 }, (_, index) => (index < 11 ? composite([5 + index]) : box(0, 0, 9, 9))),
      'nest deeper',
    ],
    ['too many parts', composite(Array<number>(300).fill(GLYPH.V)), [], 'more than 256 parts'],
    [
      'parts that double at each step',
      composite([4, 4, 4, 4, 4, 4, 4, 4]),
      Array.from({ length: 7 }, (_, index) =>
        index < 6 ? composite(Array<number>(8).fill(5 + index)) : box(0, 0, 9, 9),
      ),
      'more than 256 parts',
    ],
    ['a part that is not there', composite([999]), [], 'not in the file'],
    ['a composite that is cut off', composite([GLYPH.V, GLYPH.V]).slice(0, 20), [], 'cut off'],
  ])('%s', async (_, glyphA, more, says) => {
    expect(await refusal(tinyFace({ glyphA, more }))).toMatchObject({
      code: 'damaged',
      message: expect.stringContaining(says),
    });
  });

  it('refuses an outline of tens of thousands of points', async () => {
    expect(await refusal(tinyFace({ glyphA: zigzag(32_000) }))).toMatchObject({
      code: 'too-large',
      message: expect.stringContaining('“A”'),
    });
  });

  it('quotes a letter without an outline', async () => {
    expect(await refusal(tinyFace({ glyphA: new Uint8Array() }))).toMatchObject({
      code: 'no-outline',
      message: expect.stringContaining('“A”'),
    });
  });

  it('refuses a mark that the face does not place', async () => {
    const sound = new Uint8Array(readFileSync('node_modules/source-sans-pro/TTF/SourceSansPro-Regular.ttf'));
    await expect(buildPack({ kind: 'file', bytes: sound }, 'q\u0303')).resolves.toBeDefined();
    expect(await refusal(withTables(sound, { GPOS: null }), 'q\u0303')).toMatchObject({
      code: 'unsupported',
      message: expect.stringContaining('“q\u0303”'),
    });
  });

  it('quotes a letter that the face lacks', async () => {
    expect(await refusal(tinyFace(), 'AWA')).toMatchObject({
      code: 'no-outline',
      message: expect.stringContaining('“W”'),
    });
  });

  it.each([8, 30])('refuses an outline of which only %i bytes are there', async (bytes) => {
    const error = await refusal(tinyFace({ glyphA: box(100, 0, 500, 700).slice(0, bytes) }));
    expect(['damaged', 'no-outline', 'readers-disagree']).toContain(error.code);
  });
});

describe('decompression bombs', () => {
  it('refuses a WOFF whose tables promise gigabytes', async () => {
    const bytes = makeWoff(lato, (tag, length) => (tag === 'glyf' ? 0xffff_fff0 : length));
    expect(await refusal(bytes)).toMatchObject({
      code: 'too-large',
      message: expect.stringMatching(/unpacks to \d+\.\d MB/),
    });
  });

  it.each([-4, 4])('refuses a WOFF table that unpacks to %i bytes more than it says', async (more) => {
    const error = await refusal(makeWoff(lato, (tag, length) => (tag === 'glyf' ? length - more : length)));
    expect(error).toMatchObject({ code: 'damaged', message: expect.stringContaining('glyf') });
  });

  it('refuses a WOFF2 whose header promises gigabytes', async () => {
    const bytes = new Uint8Array(readFileSync(findFace('lato-400').path));
    new DataView(bytes.buffer).setUint32(16, 0xffff_fff0);
    expect(await refusal(bytes)).toMatchObject({ code: 'too-large' });
  });

  it.each([
    ['says so', 200_000_000],
    ['lies', 100],
  ])('refuses a WOFF2 of a few bytes that unpacks to 200 MB and %s', async (_, says) => {
    const packed = brotliCompressSync(new Uint8Array(200_000_000), {
      params: { [constants.BROTLI_PARAM_QUALITY]: 5, [constants.BROTLI_PARAM_LGWIN]: 24 },
    });
    expect(packed.length).toBeLessThan(2_000);
    const error = await refusal(woff2Of(packed, says));
    expect(['too-large', 'damaged']).toContain(error.code);
  });
});

/** One contour that goes to and fro. */
function zigzag(points: number): Uint8Array {
  const deltas = (axis: number) =>
    Array.from(
      { length: points },
      (_, index) => (index % 2 === axis ? 300 : -300) * (Math.floor(index / 2) % 2 === 0 ? 1 : -1),
    );
  return new Uint8Array(
    Buffer.concat([
      words([1, 0, 0, 900, 900, points - 1, 0]),
      new Uint8Array(points).fill(1),
      words([...deltas(0), ...deltas(1)]),
    ]),
  );
}

/** A WOFF2 with one table, `post`, that claims this many bytes. */
function woff2Of(packed: Uint8Array, says: number): Uint8Array {
  const digits: number[] = [];
  for (let rest = says; rest > 0 || digits.length === 0; rest = Math.floor(rest / 128))
    digits.unshift((rest % 128) | (digits.length > 0 ? 128 : 0));
  const length = 48 + 1 + digits.length + packed.length;
  const long = (value: number) => [value >>> 16, value & 0xffff];
  const header = words([
    ...long(0x774f4632),
    ...long(0x00010000),
    ...long(length),
    1,
    0,
    ...long(100),
    ...long(packed.length),
    ...Array<number>(12).fill(0),
  ]);
  return new Uint8Array(Buffer.concat([header, new Uint8Array([7, ...digits]), packed]));
}

describe('texts and choices', () => {
  it('refuses a text of 100,000 letters at once', async () => {
    const begun = performance.now();
    expect(await refusal(tinyFace(), 'A'.repeat(100_000))).toMatchObject({
      code: 'text-too-long',
      message: expect.stringContaining('100000'),
    });
    expect(performance.now() - begun).toBeLessThan(2_000);
  });

  it('refuses a letter with hundreds of marks', async () => {
    expect(await refusal(lato, `e${'\u0301'.repeat(300)}`)).toMatchObject({ code: 'bad-text' });
  });

  it.each([
    ['bold', 700, 'no axis “bold”'],
    ['wght', 2_000, 'from 100 to 900'],
    ['wght', Number.NaN, 'can’t be NaN'],
  ])('quotes the axis value %s %s', async (tag, value, says) => {
    const error = await refusal(new Uint8Array(readFileSync(findFace('fraunces-opsz').path)), 'A', {
      axes: { [tag]: value },
    });
    expect(error.code).toBe('bad-axis');
    expect(error.message.replace("'", '’')).toContain(says);
  });

  it('quotes a face number that is not in the file', async () => {
    expect(await refusal(lato, 'A', { index: 3 })).toMatchObject({
      code: 'unsupported',
      message: expect.stringContaining('3'),
    });
  });

  it('says which keys are near an unknown one', async () => {
    await expect(inspectFace({ kind: 'file', bytes: tinyFace() })).resolves.toBeDefined();
    await expect(buildPack({ kind: 'catalogue', key: 'lato-401' }, 'A')).rejects.toThrow(/“lato-401”.*lato-400/);
  });
});

describe('what takes too long or too much', () => {
  it('can’t grow WebAssembly memory past the cap', () => {
    const { grow } = WebAssembly.Memory.prototype;
    try {
      capWasmMemory(1);
      const memory = new WebAssembly.Memory({ initial: 1 });
      expect(memory.grow(10)).toBe(1);
      expect(() => memory.grow(10)).toThrow('limit of 1 MB');
      expect(memory.buffer.byteLength).toBe(11 * 65_536);
    } finally {
      WebAssembly.Memory.prototype.grow = grow;
    }
  });

  it('is cut off, and the next job is done all the same', async () => {
    const source = { path: findFace('inter-900-italic').path };
    await expect(inFaceProcess({ task: 'pack', source, text: 'cut off' }, 0)).rejects.toMatchObject({
      code: 'cut-off',
    });
    await expect(inFaceProcess({ task: 'pack', source, text: 'cut off' })).resolves.toMatchObject({ text: 'cut off' });
  });
});
