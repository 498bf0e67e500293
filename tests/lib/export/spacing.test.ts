import { describe, expect, it } from 'vitest';
import {
  exportedPairs,
  type ExportedSpacing,
  markup,
  spacingCss,
  spacingJson,
  spacingSvg,
} from '@/lib/export/spacing-formats';
import { drawnPack } from '../../fixtures/drawn-pack';

const pack = drawnPack('HO');
const exported: ExportedSpacing = {
  pack,
  spacing: { tracking: 10, offsets: [-25] },
  size: { value: 96, unit: 'px' },
  ground: 'light',
  licence: 'OFL-1.1, <nobody> & Co',
};
const builtIn = (pack.builtIn[0]! / pack.unitsPerEm) * 1000;

describe('a spacing that leaves', () => {
  it('has a total that is built-in, tracking and offset together', () => {
    expect(exportedPairs(exported)).toEqual([
      { left: 'H', right: 'O', builtIn, tracking: 10, offset: -25, total: builtIn - 15, wordSpace: false },
    ]);
  });
  it('is JSON that says its format, its unit and the licence of the face', () => {
    const read = JSON.parse(spacingJson(exported)) as Record<string, unknown>;
    expect(read).toMatchObject({ format: 'kerncrit-spacing', version: 1, unit: '1/1000 em', text: 'HO', tracking: 10 });
  });
  it('is CSS in em on the letter before the gap, with the browser’s own kerning off', () => {
    const css = spacingCss(exported);
    expect(css).toContain(
      `.spaced-line > span:nth-of-type(1) { letter-spacing: ${Number(((builtIn - 15) / 1000).toFixed(6))}em; }`,
    );
    expect(css).toContain('font-kerning: none;');
    expect(css).toContain('OFL-1.1');
  });
  it('keeps word spaces between spans, and nothing of the text can leave its comment', () => {
    expect(markup('A V', ['A', 'V'])).toBe('<p class="spaced-line"><span>A</span> <span>V</span></p>');
    expect(markup('a<b', ['a', '<', 'b'])).toBe(
      '<p class="spaced-line"><span>a</span><span>&lt;</span><span>b</span></p>',
    );
    expect(spacingCss({ ...exported, licence: 'x */ body{}' }).match(/\*\//g)).toHaveLength(1);
  });
  it('is SVG of outlines at true size with the licence in its metadata, escaped', () => {
    const svg = spacingSvg(exported);
    expect(svg).toContain('<dcterms:license>OFL-1.1, &lt;nobody&gt; &amp; Co</dcterms:license>');
    // Width by hand: both advances, built-in kerning, and 10 − 25 thousandths of an em.
    const advances = pack.letters.reduce((sum, glyph) => sum + pack.glyphs[glyph]!.advance, 0);
    const units = advances + pack.builtIn[0]! + (-15 * pack.unitsPerEm) / 1000;
    expect(svg).toContain(`width="${Number(((units / pack.unitsPerEm) * 96).toFixed(3))}px"`);
    expect(svg).toMatch(/<path transform="scale\(1 -1\)" fill="#000000" d="M/);
  });
});
