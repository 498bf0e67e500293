import { readFileSync } from 'node:fs';
import type { Browser } from '@playwright/test';
import opentype, { type PathCommand } from 'opentype.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { flatten } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';
import { launchChromium } from '../../fixtures/faces/chromium';
import { openLayout, type BrowserLayout } from '../../fixtures/faces/browser-layout';
import { sfntOf } from '../../fixtures/faces/face-bytes';

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz&?!';

describe('outlines are those that opentype.js reads', () => {
  it.each([
    ['lato-400', () => sfntOf('lato-400')],
    ['libre-baskerville-400', () => sfntOf('libre-baskerville-400')],
    ['abril-fatface-400', () => sfntOf('abril-fatface-400')],
    ['arvo-400', () => sfntOf('arvo-400')],
    [
      'SourceSansPro-Black.otf (CFF)',
      async () => new Uint8Array(readFileSync('node_modules/source-sans-pro/OTF/SourceSansPro-Black.otf')),
    ],
  ])('%s', async (_, read) => {
    const bytes = await read();
    const font = opentype.parse(bytes.slice().buffer);
    const pack = await buildPack({ kind: 'file', bytes }, LETTERS);
    expect(font.unitsPerEm).toBe(pack.unitsPerEm);
    for (const glyph of pack.glyphs) {
      const theirs = font.charToGlyph(glyph.cluster);
      expect(glyph.advance, glyph.cluster).toBe(theirs.advanceWidth);
      expect(boxOf(glyph.path, 1), glyph.cluster).toEqual(
        boxOf(written(theirs.getPath(0, 0, font.unitsPerEm).commands), 1),
      );
    }
  });
});

describe('letters stand in ink where Chromium draws them', () => {
  let browser: Browser, layout: BrowserLayout;
  beforeAll(async () => {
    browser = await launchChromium();
    layout = await openLayout(browser);
  });
  afterAll(() => browser?.close());

  /** q with tilde and x with circumflex have no code point of their own: the mark is placed by the face. */
  const MARKED = ['é', 'Å', 'q\u0303', 'x\u0302', 'J', 'f', 'Q', 'j'];

  it.each([
    ['SourceSansPro-Regular.otf', 'node_modules/source-sans-pro/OTF/SourceSansPro-Regular.otf'],
    ['SourceSansPro-BlackIt.ttf', 'node_modules/source-sans-pro/TTF/SourceSansPro-BlackIt.ttf'],
  ])('%s', async (_, path) => {
    const bytes = new Uint8Array(readFileSync(path));
    await layout.useFace(bytes);
    const inks = await layout.inks(MARKED.map((letter) => letter.normalize('NFC')));
    for (const [index, letter] of MARKED.entries()) {
      const pack = await buildPack({ kind: 'file', bytes }, letter);
      const box = boxOf(pack.glyphs[0]!.path, 1000 / pack.unitsPerEm);
      // A pixel, and one for rounding; curves reach their extremes thinly.
      for (const side of [0, 1, 2, 3] as const)
        expect(Math.abs(box[side] - inks[index]![side]), `${letter} side ${side}`).toBeLessThanOrEqual(2);
    }
  });
});

/** Left, bottom, right, top of the drawn curve, in whole units. */
function boxOf(path: string, scale: number): [number, number, number, number] {
  const points = flatten(parsePath(path), scale).flatMap((contour) => [...contour]);
  const xs = points.filter((_, index) => index % 2 === 0),
    ys = points.filter((_, index) => index % 2 === 1);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map((value) => Math.round(value)) as [
    number,
    number,
    number,
    number,
  ];
}

/** opentype.js has y down. */
function written(commands: PathCommand[]): string {
  const n = (value: number, sign: number) => Math.round(value * sign) + 0;
  return commands
    .map((one) => {
      if (one.type === 'Z') return 'Z';
      const end = `${n(one.x, 1)} ${n(one.y, -1)}`;
      if (one.type === 'Q') return `Q${n(one.x1, 1)} ${n(one.y1, -1)} ${end}`;
      if (one.type === 'C') return `C${n(one.x1, 1)} ${n(one.y1, -1)} ${n(one.x2, 1)} ${n(one.y2, -1)} ${end}`;
      return `${one.type}${end}`;
    })
    .join('');
}
