import { expect, it } from 'vitest';
import { faultKey, gatherFaults } from '@/shared/critique/faults';
import { measuredSuggestion } from '@/shared/critique/suggested-spacing';
import { decide, newRun, nextOpen, readRun, reopen, requestKeyOf, tallyOf } from '@/shared/critique/remark-run';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';

const at = (first: number, fault: 'wide' | 'tight' | 'left', last = first) => ({ first, last, fault });
const set = (specimenVersionId: string, ...faults: ReturnType<typeof at>[]) => ({ specimenVersionId, faults });

it('gathers by version, place and kind; the largest group first, then along the line', () => {
  const gathered = gatherFaults([
    set('a', at(3, 'wide'), at(1, 'left', 2)),
    set('a', at(3, 'wide'), at(1, 'left', 2)),
    set('a', at(3, 'wide'), at(0, 'tight')),
    set('a', at(3, 'tight')),
    set('b', at(3, 'wide')),
  ]);
  expect(gathered).toEqual([
    { specimenVersionId: 'a', ...at(3, 'wide'), at: [0, 1, 2] },
    { specimenVersionId: 'a', ...at(1, 'left', 2), at: [0, 1] },
  ]);
  expect(gathered.map(faultKey)).toEqual(['wide-3', 'left-1-2']);
});

it('suggests where the reference has a pair, the tightness of the line left as it is; else the nearest end of the half range', () => {
  const against = {
    nearest: 0,
    pairs: [
      { index: 0, rest: 4 },
      { index: 1, rest: -12.5 },
    ],
  } as unknown as StoredComparison;
  const usual = { low: -60, halfLow: -40, middle: -30, mean: -30, halfHigh: -20, high: 0, leftAlone: 0.2 };
  const measure = {
    line: { tightness: 5, stemGap: 150 },
    pairs: [
      // 15 as set, 10 beyond the line's tightness: 30 wider than the half range, whose end is at −20.
      { index: 0, usual, surprise: 2, total: 15, offset: 10, clearance: 200 },
      { index: 1, usual: null, surprise: null, total: -15, offset: -20, clearance: 200 },
    ],
  } as unknown as StoredMeasure;
  const spacing = { tracking: 5, offsets: [10, -20] };
  // By hand: 10 − 4, −20 + 12.5 rounded up.
  expect(measuredSuggestion(measure, against, spacing, { first: 0, last: 1 })).toEqual([6, -7]);
  expect(measuredSuggestion(measure, null, spacing, { first: 0, last: 0 })).toEqual([-20]);
  // A pair of a run without a finding stays as it is; a run of such pairs alone has no suggestion.
  expect(measuredSuggestion(measure, null, spacing, { first: 0, last: 1 })).toEqual([-20, -20]);
  expect(measuredSuggestion(measure, null, spacing, { first: 1, last: 1 })).toBeNull();
});

it('a run of one remark outlives being kept as text, goes on where it was, and never gives two notes one key', () => {
  const begun = decide(decide({ ...newRun('one'), body: 'Close it.' }, 'A', 'left'), 'B', 'passed');
  const kept = readRun(JSON.stringify(begun), 'two');
  expect(kept).toEqual(begun);
  expect(nextOpen(kept, ['A', 'B', 'C'])).toBe('C');
  expect(tallyOf(kept, ['A', 'B', 'C'])).toEqual({ left: 1, passed: 1 });
  const again = reopen(kept, 'A', 'three');
  expect(nextOpen(again, ['A', 'B', 'C'])).toBe('A');
  expect(requestKeyOf(again, 'A')).not.toBe(requestKeyOf(kept, 'A'));
  expect(readRun('{"half":', 'four')).toEqual(newRun('four'));
});
