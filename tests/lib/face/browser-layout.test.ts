import type { Browser } from '@playwright/test';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPack, buildPairs, type FaceSource } from '@/lib/face/build-pack';
import { placeLetters, untouchedSpacing } from '@/shared/outline/place-letters';
import { openLayout, type BrowserLayout } from '../../fixtures/faces/browser-layout';
import { launchChromium } from '../../fixtures/faces/chromium';
import { comparedFaces } from '../../fixtures/faces/compared-faces';

/** Oracle: Chromium's own text layout, DOM text at 1000 px, ligatures off. */
const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'];
const PAIRS = LETTERS.flatMap((left) => LETTERS.map((right) => left + right));

/**
 * Lines with what pairs alone don't show: kerning with the space, accents, figures, punctuation, what would be a
 * ligature.
 */
const LINES = [
  'AV To We, Y. L’A',
  'office fluffy',
  'Café Åré naïve',
  '1917 (41) 7.40',
  'T. “V” — A',
  'T\u00a0A 5\u2009kg\u2003V',
];

let browser: Browser;
let layout: BrowserLayout;
beforeAll(async () => {
  browser = await launchChromium();
  layout = await openLayout(browser);
});
afterAll(() => browser?.close());

describe('built-in values are what Chromium applies', () => {
  it.each(comparedFaces().map((face) => [face.name, face] as const))(
    '%s, all 2704 Latin pairs and six lines',
    async (_, { bytes, axes }) => {
      const source = { kind: 'file', bytes, axes } as const;
      await layout.useFace(bytes, axes);
      const table = await buildPairs(source, PAIRS);
      const perMille = 1000 / table.unitsPerEm;
      const widths = await layout.widths([...LETTERS, ...PAIRS]);
      const single = new Map(LETTERS.map((letter, index) => [letter, widths[index]!]));
      const worst = { advance: 0, builtIn: 0, pair: '' };
      for (const glyph of table.glyphs)
        worst.advance = Math.max(
          worst.advance,
          Math.abs(glyph.advance * perMille - (single.get(glyph.cluster) ?? Number.NaN)),
        );
      PAIRS.forEach((pair, index) => {
        const browserKerning = widths[LETTERS.length + index]! - single.get(pair[0]!)! - single.get(pair[1]!)!;
        const difference = Math.abs(table.pairs[index]!.builtIn * perMille - browserKerning);
        if (!(difference <= worst.builtIn)) Object.assign(worst, { builtIn: difference, pair });
      });
      expect(worst.builtIn, `at ${worst.pair}`).toBeLessThan(1);
      expect(worst.advance).toBeLessThan(1);
      for (const line of LINES) expect(await worstStep(source, line), line).toBeLessThan(1);
    },
  );
});

/**
 * The largest difference from Chromium in a letter's distance from the one before, 1/1000 em. Chromium's letter begins
 * where the text up to and with it ends, less its own advance (a legacy kern value is spread over both letters'
 * advances, so the edges of a Range would show only half of it).
 */
async function worstStep(source: FaceSource, text: string): Promise<number> {
  const pack = await buildPack(source, text).catch((error: Error) => error);
  // Latin subsets lack some letters; the browser would take those from another face.
  if (pack instanceof Error) return /has no letter/.test(pack.message) ? 0 : Number.NaN;
  const placed = placeLetters(pack, untouchedSpacing(pack));
  const clusters = pack.letters.map((letter) => pack.glyphs[letter]!.cluster);
  let end = 0;
  const upTo = clusters.map((cluster) => pack.text.slice(0, (end = pack.text.indexOf(cluster, end) + cluster.length)));
  const widths = await layout.widths([...upTo, ...clusters]);
  const theirs = clusters.map((_, index) => widths[index]! - widths[clusters.length + index]!);
  const ours = placed.letters.map((letter) => (letter.x * 1000) / pack.unitsPerEm);
  return Math.max(
    ...ours.slice(1).map((_, index) => Math.abs(ours[index + 1]! - ours[index]! - theirs[index + 1]! + theirs[index]!)),
  );
}
