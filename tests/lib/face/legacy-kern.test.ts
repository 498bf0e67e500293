import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPairs } from '@/lib/face/build-pack';
import { readFace } from '@/lib/face/read-face';
import { openLayout, type BrowserLayout } from '../../fixtures/faces/browser-layout';
import { launchChromium } from '../../fixtures/faces/chromium';
import { sfntOf, withTables } from '../../fixtures/faces/face-bytes';
import { words } from '../../fixtures/faces/tiny-face';

/** The legacy table in its odder forms, as Chromium applies them (oracle: its own layout of the same bytes). */
let browser: Browser, layout: BrowserLayout, arvo: Uint8Array;
let glyph: Record<'A' | 'V' | 'T' | 'o', number>;
beforeAll(async () => {
  browser = await launchChromium();
  layout = await openLayout(browser);
  arvo = await sfntOf('arvo-400');
  const { font } = await readFace(arvo);
  glyph = {
    A: font.nominalGlyph(65)!,
    V: font.nominalGlyph(86)!,
    T: font.nominalGlyph(84)!,
    o: font.nominalGlyph(111)!,
  };
});
afterAll(() => browser?.close());

const PAIRS = ['AV', 'To', 'VA', 'oo'];

async function both(kern: Uint8Array): Promise<{ ours: number[]; theirs: number[] }> {
  const bytes = withTables(arvo, { kern });
  await layout.useFace(bytes);
  const table = await buildPairs({ kind: 'file', bytes }, PAIRS);
  const widths = await layout.widths([...PAIRS, ...PAIRS.flatMap((pair) => [...pair])]);
  const perMille = (value: number) => Math.round((value * 1000) / table.unitsPerEm) + 0;
  return {
    ours: table.pairs.map((pair) => perMille(pair.builtIn)),
    theirs: PAIRS.map(
      (_, index) =>
        Math.round(widths[index]! - widths[PAIRS.length + 2 * index]! - widths[PAIRS.length + 2 * index + 1]!) + 0,
    ),
  };
}

type Pair = [number, number, number];
const sorted = (pairs: Pair[]) => [...pairs].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
const body = (pairs: Pair[]) => {
  const power = 2 ** Math.floor(Math.log2(pairs.length));
  return [pairs.length, 6 * power, Math.log2(power), 6 * (pairs.length - power), ...pairs.flat()];
};
const subtable = (pairs: Pair[], coverage: number) => [0, 14 + 6 * pairs.length, coverage, ...body(pairs)];
const one = (): Pair[] =>
  sorted([
    [glyph.A, glyph.V, -200],
    [glyph.T, glyph.o, -300],
  ]);

describe('a legacy kern table', () => {
  it.each<[string, () => number[]]>([
    ['with one subtable', () => [0, 1, ...subtable(one(), 0x0001)]],
    [
      'with two that add up',
      () => [
        0,
        2,
        ...subtable(one(), 0x0001),
        ...subtable(
          sorted([
            [glyph.A, glyph.V, -60],
            [glyph.V, glyph.A, -90],
          ]),
          0x0001,
        ),
      ],
    ],
    [
      'with one that overrides',
      () => [
        0,
        2,
        ...subtable(one(), 0x0001),
        ...subtable(
          sorted([
            [glyph.A, glyph.V, -60],
            [glyph.V, glyph.A, -90],
          ]),
          0x0009,
        ),
      ],
    ],
    ['with minimum values', () => [0, 1, ...subtable(one(), 0x0003)]],
    ['across the stream', () => [0, 1, ...subtable(one(), 0x0005)]],
    ['for vertical text', () => [0, 1, ...subtable(one(), 0x0000)]],
    ['vertical, then horizontal', () => [0, 2, ...subtable(one(), 0x0000), ...subtable(one(), 0x0001)]],
    ['out of order', () => [0, 1, ...subtable([...one()].reverse(), 0x0001)]],
    ['of Apple’s version', () => [1, 0, 0, 1, 0, 16 + 6 * 2, 0, 0, ...body(one())]],
    ['of format 2', () => [0, 1, 0, 36, 0x0201, 8, 14, 22, 30, glyph.A, 1, 30, glyph.V, 1, 2, 0, -200, 0, 0, 0]],
    ['of a format that does not exist', () => [0, 1, ...subtable(one(), 0x0701)]],
  ])('%s', async (_, kern) => {
    const { ours, theirs } = await both(words(kern()));
    expect(ours).toEqual(theirs);
  });

  it('that is cut off makes the face unfit, for Chromium too', async () => {
    const bytes = withTables(arvo, { kern: words([0, 1, ...subtable(one(), 0x0001).slice(0, 9)]) });
    await expect(layout.useFace(bytes)).rejects.toThrow();
    await expect(buildPairs({ kind: 'file', bytes }, PAIRS)).rejects.toMatchObject({
      code: 'damaged',
      message: expect.stringContaining('kern is cut off'),
    });
  });
});
