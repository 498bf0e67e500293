import { quantileSorted } from 'd3-array';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { quantile } from '@/shared/stats/quantile';

// R 4: quantile(c(15, 20, 35, 40, 50), c(.05, .3, .4, .5, 1)), type 7, computed by hand: positions 0.2, 1.2, 1.6, 2, 4
// between the sorted values.
it.each([
  [0.05, 16],
  [0.3, 23],
  [0.4, 29],
  [0.5, 35],
  [1, 50],
  [0, 15],
])('lies in a straight line between order statistics: %d', (share, value) => {
  expect(quantile([35, 15, 50, 20, 40], share)).toBeCloseTo(value, 12);
});

it('is the quantile of d3-array, whatever the values and the share', () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(value, { minLength: 1, maxLength: 40 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (values, share) => {
        const other = quantileSorted(
          values.toSorted((one, another) => one - another),
          share,
        )!;
        expect(Math.abs(quantile(values, share) - other)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(other)));
      },
    ),
  );
});

it('refuses what has no quantile', () => {
  expect(() => quantile([], 0.5)).toThrow(/at least one/);
  expect(() => quantile([1, NaN], 0.5)).toThrow(/NaN/);
  expect(() => quantile([1], 1.2)).toThrow(/1\.2/);
});
