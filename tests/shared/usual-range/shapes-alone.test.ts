import { beforeAll, describe, expect, test } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { prepareLine } from '@/shared/measure';
import type { Pack } from '@/shared/schemas/pack';
import { usualRanges } from '@/shared/usual-range/usual-range';

let pack: Pack;
beforeAll(async () => {
  const { usual: _, ...plain } = await buildPack({ kind: 'catalogue', key: 'lato-400' }, 'HAVANA Tofy 17 nowy.');
  pack = plain;
});

const ranges = (of: Pack) => usualRanges(prepareLine(of));

/** Every coordinate of a path through this. */
function changed(of: Pack, change: (x: number, y: number) => [number, number], scale = 1): Pack {
  const glyphs = of.glyphs.map((glyph) => ({
    ...glyph,
    advance: glyph.advance * scale,
    path: glyph.path.replace(/(-?\d+) (-?\d+)/g, (_, x: string, y: string) => change(Number(x), Number(y)).join(' ')),
  }));
  return { ...of, glyphs };
}

describe('the range from shapes alone', () => {
  test('knows no letter by name: other names for the same outlines change nothing', () => {
    const renamed = {
      ...pack,
      glyphs: pack.glyphs.map((glyph) => (glyph.cluster === 'V' ? { ...glyph, cluster: 'Ж' } : glyph)),
    };
    const [, , va] = ranges(pack);
    // AЖ are letters of two scripts; the pair is silent, but VA as ЖА is the same question.
    expect(
      ranges({
        ...renamed,
        glyphs: renamed.glyphs.map((glyph) => (glyph.cluster === 'A' ? { ...glyph, cluster: 'А' } : glyph)),
      })[2],
    ).toEqual(va);
  });

  test('is the same for a face drawn on an em of twice the units', () => {
    const twice = changed(pack, (x, y) => [2 * x, 2 * y], 2);
    const { ascender, descender, capHeight, xHeight, ascenderTop } = pack.vertical;
    const vertical = {
      ascender: 2 * ascender,
      descender: 2 * descender,
      capHeight: 2 * capHeight,
      xHeight: 2 * xHeight,
      ascenderTop: 2 * ascenderTop,
    };
    expect(ranges({ ...twice, vertical, unitsPerEm: 2 * pack.unitsPerEm })).toEqual(ranges(pack));
  });

  test('closes what designers close and leaves straight stems alone', () => {
    const [ha, av] = ranges(pack);
    expect(av!.halfHigh).toBeLessThan(-30);
    expect(ha!.leftAlone).toBeGreaterThan(0.5);
  });

  test('has its ends in order, and is silent on figures, marks and word spaces', () => {
    ranges(pack).forEach((range, index) => {
      const silent =
        pack.wordSpace[index]! > 0 ||
        /[17.]/.test(pack.glyphs[pack.letters[index]!]!.cluster + pack.glyphs[pack.letters[index + 1]!]!.cluster);
      expect(range === null, `pair ${index}`).toBe(silent);
      if (range === null) return;
      const { low, halfLow, middle, halfHigh, high } = range;
      expect([low, halfLow, middle, halfHigh, high]).toEqual(
        [low, halfLow, middle, halfHigh, high].sort((a, b) => a - b),
      );
      expect(range.leftAlone).toBeGreaterThanOrEqual(0);
      expect(range.leftAlone).toBeLessThanOrEqual(1);
    });
  });
});
