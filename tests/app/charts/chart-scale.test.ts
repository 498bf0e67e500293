import { describe, expect, it } from 'vitest';
import { chartScale, percent } from '@/app/_ui/charts/axes';

// Expected places computed by hand.
describe('places along an axis', () => {
  it('puts equal ratios at equal distances on a scale of doublings', () => {
    const { at, ticks } = chartScale('log2', [12, 24, 48]);
    expect(at(24) - at(12)).toBeCloseTo(at(48) - at(24), 9);
    expect(ticks).toEqual([12, 24, 48]);
  });

  it('gives every round a place, the first and the last not at the very edge', () => {
    const { at, ticks } = chartScale('round', [1, 4]);
    expect(ticks).toEqual([1, 2, 3, 4]);
    // 3.5 rounds wide in all, a quarter of one before the first.
    expect(at(1)).toBeCloseTo((100 * 0.25) / 3.5, 9);
  });

  it('labels days at even distances, also when the first value is in the middle of one', () => {
    const noon = Date.UTC(2027, 2, 1, 12);
    const days = (count: number) => chartScale('time', [noon, noon + count * 86_400_000]).ticks;
    expect(days(3).map((tick) => new Date(tick).toISOString().slice(5, 13))).toEqual([
      '03-02T00',
      '03-03T00',
      '03-04T00',
    ]);
    // Over the end of a month, in even steps.
    const long = days(40);
    expect(new Set(long.slice(1).map((tick, index) => tick - long[index]!)).size).toBe(1);
  });

  it('gives a single value room', () => expect(chartScale('linear', [7]).at(7)).toBe(50));

  it.each([
    ['log2', 0],
    ['linear', Number.NaN],
    ['round', Infinity],
  ] as const)('refuses what cannot be placed: %s %d', (kind, value) => {
    expect(() => chartScale(kind, [value])).toThrow(String(value));
  });

  it('writes a place with two decimals', () => expect(percent(100 / 3)).toBe('33.33%'));
});
