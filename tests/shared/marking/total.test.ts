import { describe, expect, it } from 'vitest';
import { totalOf } from '@/shared/marking/total';

const levels = ['Not yet', 'In part', 'Mostly', 'Throughout'].map((title, step) => ({
  title,
  points: [0, 40, 70, 100][step]!,
}));

describe('the total', () => {
  it('weighs the share of points of each criterion', () => {
    // By hand: 70 % of 3 = 2.1; 100 % of 1 = 1; together 3.1 of 4 = 77.5 %.
    const total = totalOf([
      { title: 'Evenness', weight: 3, levels, level: 2 },
      { title: 'Reasons', weight: 1, levels, level: 3 },
    ]);
    expect(total.percent).toBeCloseTo(77.5, 12);
    expect(total.arithmetic).toEqual([
      'Evenness: Mostly, 70% of weight 3 = 2.1',
      'Reasons: Throughout, 100% of weight 1 = 1',
      'Together 3.1 of 4, which is 77.5%',
    ]);
  });
  it('is not given before every criterion has its level', () => {
    const total = totalOf([
      { title: 'Evenness', weight: 3, levels, level: 2 },
      { title: 'Reasons', weight: 1, levels, level: null },
    ]);
    expect(total.percent).toBeNull();
    expect(total.arithmetic[1]).toBe('Reasons: not marked yet (weight 1)');
  });
  it('refuses what cannot be counted, and quotes it', () => {
    expect(() => totalOf([{ title: 'Evenness', weight: 0, levels, level: 2 }])).toThrow(/sum to 0/);
    expect(() => totalOf([{ title: 'Evenness', weight: 1, levels, level: 4 }])).toThrow(/4 levels; level 5/);
  });
});
