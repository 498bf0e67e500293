import { describe, expect, it } from 'vitest';
import { intraclassCorrelation } from '@/shared/stats/intraclass-correlation';
import { krippendorffAlpha } from '@/shared/stats/krippendorff-alpha';
import { median, medianAbsoluteDeviation } from '@/shared/stats/median';
import { pearson, ranks, spearman } from '@/shared/stats/correlation';
import { quantile } from '@/shared/stats/quantile';
import { weightedKappa } from '@/shared/stats/weighted-kappa';

describe('middle and spread', () => {
  it('takes the mean of the two middle values, by hand', () => {
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(() => median([])).toThrow(/at least one/);
    expect(() => median([1, Number.NaN])).toThrow(/NaN/);
  });
  it('gives the median absolute deviation, by hand: middle 2, deviations 1 1 0 0 2 4 7', () => {
    expect(medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9])).toBe(1);
  });
  it('interpolates as type 7 of Hyndman and Fan, by hand: place (4 − 1) × 0.25 = 0.75', () => {
    expect(quantile([1, 2, 3, 4], 0.25)).toBe(1.75);
    expect(quantile([15, 20, 35, 40, 50], 0.4)).toBe(29);
    expect(() => quantile([1], 1.5)).toThrow(/1.5/);
  });
});

describe('correlation', () => {
  it('is exact on a line and 0.5 on 1 2 3 against 1 3 2, by hand', () => {
    expect(pearson([1, 2, 3], [2, 4, 6])).toBeCloseTo(1, 12);
    expect(pearson([1, 2, 3], [1, 3, 2])).toBeCloseTo(0.5, 12);
    expect(pearson([1, 1], [1, 2])).toBeNull();
    expect(() => pearson([1], [1, 2])).toThrow(/1 and 2/);
  });
  it('ranks ties by their mean, and agrees with 1 − 6Σd²/(n(n² − 1)) where there are none: 1 − 6·8/(5·24)', () => {
    expect(ranks([10, 20, 20, 30])).toEqual([1, 2.5, 2.5, 4]);
    expect(spearman([1, 2, 3, 4, 5], [2, 1, 4, 3, 7])).toBeCloseTo(1 - (6 * 4) / (5 * 24), 12);
    expect(spearman([1, 2, 3, 4, 5], [3, 2, 1, 4, 5])).toBeCloseTo(1 - (6 * 8) / (5 * 24), 12);
  });
});

describe('agreement of judges', () => {
  it('gives ICC(2,1) = .29 on the four judges of Shrout and Fleiss (1979), table 2', () => {
    const ratings = [
      [9, 2, 5, 8],
      [6, 1, 3, 2],
      [8, 4, 6, 8],
      [7, 1, 2, 6],
      [10, 5, 6, 9],
      [6, 2, 4, 7],
    ];
    expect(intraclassCorrelation(ratings)).toBeCloseTo(0.29, 2);
    expect(() => intraclassCorrelation([[1, 2], [1]])).toThrow(/\[1\]/);
  });
  it('gives kappa by hand: 35 of 50 agree, 25 expected, (0.7 − 0.5) / 0.5 = 0.4', () => {
    expect(
      weightedKappa(
        [
          [20, 5],
          [10, 15],
        ],
        'none',
      ),
    ).toBeCloseTo(0.4, 12);
  });
  it('gives the published kappas of two dermatologists on four levels (SAS/STAT User’s Guide, FREQ, example of kappa)', () => {
    const table = [
      [10, 4, 1, 0],
      [5, 10, 12, 2],
      [2, 4, 12, 5],
      [0, 2, 6, 13],
    ];
    expect(weightedKappa(table, 'none')).toBeCloseTo(0.3449, 4);
    expect(weightedKappa(table, 'linear')).toBeCloseTo(0.5082, 4);
  });
  it('gives the published plain kappa of Cohen’s three diagnoses (1968, table 1): .492', () => {
    const table = [
      [44, 7, 9],
      [5, 20, 5],
      [1, 3, 6],
    ];
    expect(weightedKappa(table, 'none')).toBeCloseTo(0.492, 3);
  });
  it('weighs disagreement by distance, by hand: one step of two counts 1/2 (linear), 1/4 (quadratic)', () => {
    // Rows and columns all hold 2 of 6, so every cell expects 2/3. Four cells are one step apart (two counts seen), two
    // cells two steps.
    const table = [
      [2, 0, 0],
      [0, 1, 1],
      [0, 1, 1],
    ];
    expect(weightedKappa(table, 'linear')).toBeCloseTo(1 - (2 * 0.5) / (((4 * 2) / 3) * 0.5 + (2 * 2) / 3), 12);
    expect(weightedKappa(table, 'quadratic')).toBeCloseTo(1 - (2 * 0.25) / (((4 * 2) / 3) * 0.25 + (2 * 2) / 3), 12);
  });
  it("gives the values of Krippendorff's worked example with four observers and twelve units, some left out (2011, section E)", () => {
    const [a, b, c, d] = [
      [1, 2, 3, 3, 2, 1, 4, 1, 2, null, null, null],
      [1, 2, 3, 3, 2, 2, 4, 1, 2, 5, null, 3],
      [null, 3, 3, 3, 2, 3, 4, 2, 2, 5, 1, null],
      [1, 2, 3, 3, 2, 4, 4, 1, 2, 5, 1, null],
    ];
    const units = a!.map((value, unit) => [value, b![unit]!, c![unit]!, d![unit]!]);
    expect(krippendorffAlpha(units, 'nominal')).toBeCloseTo(0.743, 3);
    expect(krippendorffAlpha(units, 'ordinal')).toBeCloseTo(0.815, 3);
    expect(krippendorffAlpha(units, 'interval')).toBeCloseTo(0.849, 3);
    expect(krippendorffAlpha(units, 'ratio')).toBeCloseTo(0.797, 3);
  });
});
