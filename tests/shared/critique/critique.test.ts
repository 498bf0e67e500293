import { describe, expect, it } from 'vitest';
import { lettersOf, runOf } from '@/shared/critique/run';
import { offsetsOf, suggestedSpacing } from '@/shared/critique/suggested-spacing';
import { followPair, pairChange } from '@/shared/critique/pair-change';
import { fillStockNote } from '@/shared/critique/stock-note';

const letters = ['W', 'A', 'L', 'N', 'U', 'T'];

describe('where a note is pinned', () => {
  it('is the line, a pair, or a run in order', () => {
    expect(runOf(null, null, 5)).toBeNull();
    expect(runOf(2, 2, 5)).toEqual({ first: 2, last: 2 });
    expect(runOf(4, 1, 5)).toEqual({ first: 1, last: 4 });
  });
  it('refuses half a run and pairs that the line does not have', () => {
    expect(() => runOf(1, null, 5)).toThrow(/both/);
    expect(() => runOf(5, 5, 5)).toThrow(/5 pairs; pair 6/);
  });
  it('names its letters', () => {
    expect(lettersOf(letters, { first: 0, last: 0 })).toBe('WA');
    expect(lettersOf(letters, { first: 3, last: 4 })).toBe('NUT');
    expect(lettersOf(letters, null)).toBe('WALNUT');
  });
});

describe('a suggestion', () => {
  const spacing = { tracking: 10, offsets: [-40, -5, 0, 4, 0] };
  it('replaces the offsets of its run and leaves the rest', () => {
    expect(suggestedSpacing(spacing, { first: 1, last: 2 }, [-9, 3])).toEqual({
      tracking: 10,
      offsets: [-40, -9, 3, 4, 0],
    });
    expect(offsetsOf(spacing, { first: 0, last: 1 })).toEqual([-40, -5]);
  });
  it('must have one offset a pair', () => {
    expect(() => suggestedSpacing(spacing, { first: 1, last: 2 }, [-9])).toThrow(/1 offsets .* 2 pairs/);
  });
});

describe('how a pair has changed', () => {
  const then = { tracking: 10, offsets: [-40, -5] };
  // By hand: added then is 10 − 40 = −30; the suggestion −60 aims at 10 − 60 = −50.
  it.each([
    [{ tracking: 10, offsets: [-60, 0] }, 'met', -50],
    [{ tracking: 0, offsets: [-45, 0] }, 'nearer', -45],
    [{ tracking: 10, offsets: [-40, 99] }, 'same', -30],
    [{ tracking: 10, offsets: [-30, 0] }, 'away', -20],
    [{ tracking: 0, offsets: [-70, 0] }, 'same', -70],
  ] as const)('told beside the suggestion: %j is %s', (now, toward, added) => {
    expect(pairChange(0, then, { tracking: now.tracking, offsets: [...now.offsets] }, 0, -60)).toEqual({
      pair: 0,
      then: -30,
      now: added,
      moved: added + 30,
      toward,
    });
  });
  it('says no direction without a suggestion, and nothing of a pair that is gone', () => {
    expect(pairChange(1, then, then, 1, null)).toMatchObject({ moved: 0, toward: null });
    expect(pairChange(1, then, then, null, 3)).toEqual({ pair: 1, then: 5, now: null, moved: 0, toward: null });
  });
  it('follows a pair through versions of its line', () => {
    expect(followPair(2, [])).toBe(2);
    expect(
      followPair(2, [
        [0, null, 1],
        [null, 4],
      ]),
    ).toBe(4);
    expect(
      followPair(1, [
        [0, null, 1],
        [null, 4],
      ]),
    ).toBeNull();
  });
});

describe('a stock note', () => {
  it('takes the letters and the fault', () => {
    expect(fillStockNote('{pair}: {left} is {fault}, {right} is not. {other}', ['A', 'V'], 'left')).toBe(
      'AV: A is too far left, V is not. {other}',
    );
    expect(fillStockNote('{pair} is {fault}', ['L', 'T'], '')).toBe('LT is not yet even');
  });
});
