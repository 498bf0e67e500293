import { expect, it } from 'vitest';
import { afterLateRule } from '@/shared/marking/marks';

it('leaves a proof in time alone', () => {
  expect(afterLateRule(80, null)).toEqual({ percent: 80, sentence: null });
});

it('takes its share of the mark and shows how', () => {
  // By hand: two days at 10 % of the mark; 80 % of 80 is 64.
  const late = afterLateRule(80, { startedDays: 2, deduct: 20 });
  expect(late.percent).toBeCloseTo(64, 12);
  expect(late.sentence).toBe(
    '2 days late, every begun day counted; the late rule takes 20% of the mark: 80% × 80% = 64%.',
  );
});

it('says so where nothing is taken, or nothing is marked yet', () => {
  expect(afterLateRule(80, { startedDays: 1, deduct: 0 })).toEqual({
    percent: 80,
    sentence: '1 day late, every begun day counted; the late rule takes nothing off.',
  });
  expect(afterLateRule(null, { startedDays: 1, deduct: 5 })).toEqual({
    percent: null,
    sentence: '1 day late, every begun day counted; the late rule takes 5% of the mark.',
  });
  expect(afterLateRule(80, { startedDays: 30, deduct: 100 }).percent).toBe(0);
});
