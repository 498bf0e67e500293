import { describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { carrySpacing } from '@/lib/reference/carry';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import type { Size } from '@/shared/schemas/spacing';

const at = (pack: Pack, value: number, unit: Size['unit'] = 'px') => ({
  pack,
  size: { value, unit },
  ground: 'light' as const,
});
const lato = (weight: number, text = 'HAVOC') => buildPack({ kind: 'catalogue', key: `lato-${weight}` }, text);
const spacing = { tracking: -12, offsets: [-8, -30, 14, 0] };

describe('carrySpacing', () => {
  it('changes nothing from a line to itself', async () => {
    const line = at(await lato(400), 64);
    expect(carrySpacing(spacing, line, line).spacing).toEqual(spacing);
  });

  // The rule is −10 for each doubling above 16 px and +15 for each halving below; 12 pt are 16 px. Sums by hand.
  it.each([
    ['32 px to 64 px', 32, 64, 'px', -22],
    ['16 px to 128 px', 16, 128, 'px', -42],
    ['16 px to 8 px', 16, 8, 'px', 3],
    ['16 px to 12 pt', 16, 12, 'pt', -12],
    ['8 px to 32 px', 8, 32, 'px', -37],
  ] as const)('follows the size by tracking alone: %s', async (_, from, to, unit, tracking) => {
    const pack = await lato(400);
    expect(carrySpacing(spacing, at(pack, from), at(pack, to, unit)).spacing).toEqual({
      tracking,
      offsets: spacing.offsets,
    });
  });

  it('keeps each total as a share of the face’s own stem gap in another weight', async () => {
    const [light, black] = [await lato(300), await lato(900)];
    const stem = (pack: Pack) =>
      measureLine(
        pack,
        { tracking: 0, offsets: pack.builtIn.map(() => 0) },
        { size: { value: 64, unit: 'px' }, ground: 'light' },
      ).line.stemGap!;
    const share = stem(black) / stem(light);
    expect(share).toBeLessThan(1);
    const carried = carrySpacing(spacing, at(light, 64), at(black, 64)).spacing;
    expect(carried.tracking).toBe(Math.round(-12 * share));
    carried.offsets.forEach((offset, pair) => {
      const total = (pack: Pack, set: number) => (pack.builtIn[pair]! * 1000) / pack.unitsPerEm + set;
      expect(Math.abs(total(black, offset) - total(light, spacing.offsets[pair]!) * share)).toBeLessThanOrEqual(0.5);
    });
  });

  it('puts pairs where the other line has them, and leaves new ones untouched', async () => {
    const { map, spacing: carried } = carrySpacing(spacing, at(await lato(400), 64), at(await lato(400, 'HAVOCS'), 64));
    expect(map).toEqual([0, 1, 2, 3]);
    expect(carried.offsets).toEqual([-8, -30, 14, 0, 0]);
  });
});
