import { describe, expect, it } from 'vitest';
import { buildPack, buildPairs } from '@/lib/face/build-pack';
import { prepareLine } from '@/shared/measure';
import { measureLine } from '@/shared/scoring';
import { packSchema } from '@/shared/schemas/pack';

const at = { size: { value: 96, unit: 'px' }, ground: 'light' } as const;

describe.each(['lato-400-italic', 'source-serif-4-400-italic', 'montserrat-700-italic', 'crimson-pro-400-italic'])(
  'sides in %s',
  (key) => {
    it('are read along the slant: a stem is straight though it leans', async () => {
      const pack = packSchema.parse(await buildPack({ kind: 'catalogue', key }, 'HINMOAT'));
      expect(pack.version).toBe(2);
      // Between 5 and 20 degrees.
      expect(pack.slant).toBeGreaterThan(87);
      expect(pack.slant).toBeLessThan(364);
      const line = prepareLine(pack);
      const sides = (letter: string) => line.letters[line.clusters.indexOf(letter)]!.sides;
      for (const letter of 'HI')
        expect([letter, sides(letter)]).toEqual([letter, { left: 'straight', right: 'straight' }]);
      expect(sides('N')).toEqual({ left: 'straight', right: 'straight' });
      expect(sides('O')).toEqual({ left: 'round', right: 'round' });
      expect(sides('A').left).toBe('slanted-in');
    });
  },
);

describe('an upright and its italic', () => {
  it('hold about as much white between stems', async () => {
    const gap = async (key: string) => {
      const pack = await buildPack({ kind: 'catalogue', key }, 'HH');
      return measureLine(pack, { tracking: 0, offsets: [0] }, at).pairs[0]!.apparentGap;
    };
    const upright = await gap('lato-400'),
      italic = await gap('lato-400-italic');
    expect(Math.abs(italic / upright - 1)).toBeLessThan(0.1);
  });
  it('of which the upright has no slant at all', async () => {
    for (const key of ['lato-400', 'playfair-display-400'])
      expect((await buildPack({ kind: 'catalogue', key }, 'Ho')).slant).toBe(0);
  });
});

describe('pairs', () => {
  it('are two letters with nothing between them: a word space is no kerning', async () => {
    await expect(buildPairs({ kind: 'catalogue', key: 'lato-400' }, ['A V'])).rejects.toThrow('nothing between them');
    const { pairs } = await buildPairs({ kind: 'catalogue', key: 'lato-400' }, ['AV']);
    expect(pairs[0]!.builtIn).toBeLessThan(0);
  });
});
