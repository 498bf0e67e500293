import { expect, it } from 'vitest';
import { changeWords, referenceWords } from '@/shared/critique/pair-change';
import { sinceLastRound } from '@/shared/critique/desk';
import type { StoredComparison } from '@/shared/schemas/stored-figures';

const against = (rests: number[]) =>
  ({
    nearest: 0,
    pairs: rests.map((rest, index) => ({ index, rest, tolerance: 8, within: Math.abs(rest) <= 8 })),
  }) as unknown as StoredComparison;
const set = (offsets: number[], tracking = 0) => ({ tracking, offsets });
const none = { maps: [], before: null, after: null, notes: [] };

it('tells every pair that moved, tracking and offset together, and leaves out those that did not', () => {
  expect(sinceLastRound({ ...none, then: set([0, -10, 5]), now: set([0, -30, 5]) })).toMatchObject([
    { pair: 1, place: 1, then: -10, now: -30, moved: -20, toward: null, reference: null },
  ]);
  // Tracking moves all of them; what an offset takes back has not moved.
  expect(
    sinceLastRound({ ...none, then: set([0, 0]), now: set([-4, 0], 4) }).map(({ pair, moved }) => [pair, moved]),
  ).toEqual([[1, 4]]);
});

it('says whether a pair went towards the reference, by what is left of it after tightness', () => {
  const moved = sinceLastRound({
    ...none,
    then: set([0, 0, 0, 0]),
    now: set([1, 1, 1, 1]),
    before: against([40, 20, -20, 30]),
    after: against([20, 8, -25, -30]),
  });
  expect(moved.map(({ reference }) => reference)).toEqual(['nearer', 'met', 'away', 'same']);
  expect(moved.map(({ reference }) => referenceWords(reference))[2]).toBe('further from the reference');
  expect(referenceWords(null)).toBe('');
});

it('says whether it went towards what a note of that round suggested', () => {
  const change = { pair: 1, then: -10, now: -30, moved: -20, toward: 'nearer' as const };
  const [moved] = sinceLastRound({ ...none, then: set([0, -10]), now: set([0, -30]), notes: [{ changes: [change] }] });
  expect(changeWords(moved!)).toBe('Was \u221210, now \u221230 (20 tighter): nearer to the suggestion.');
});

it('follows pairs into a new version of the line, and tells those that are gone', () => {
  // The first pair is gone, the second is first now.
  const moved = sinceLastRound({
    ...none,
    then: set([7, -10]),
    now: set([-12]),
    maps: [[null, 0]],
    before: against([0, 20]),
    after: against([9]),
  });
  expect(moved).toMatchObject([
    { pair: 0, place: null, now: null, reference: null },
    { pair: 1, place: 0, moved: -2, reference: 'nearer' },
  ]);
});
