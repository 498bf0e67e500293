import { describe, expect, it } from 'vitest';
import { faultsOf } from '@/shared/critique/faults';
import { fillStockNote } from '@/shared/critique/stock-note';
import type { StoredComparison, StoredMeasure } from '@/shared/schemas/stored-figures';

const pairs = (rests: number[]) =>
  rests.map((rest, index) => ({ index, rest, tolerance: 10, within: Math.abs(rest) <= 10 }));
const against = (rests: number[], findings: unknown[] = []) =>
  ({ nearest: 0, pairs: pairs(rests), findings, meantContacts: [] }) as unknown as StoredComparison;
const measured = (offsets: [number, number | null, string?][]) =>
  ({
    pairs: offsets.map(([offset, suggestion, contact], index) => ({
      index,
      offset,
      suggestion,
      contact: contact ?? 'apart',
    })),
  }) as unknown as StoredMeasure;

describe('the pairs that stand out', () => {
  it('come worst first, in tolerances', () => {
    expect(faultsOf(null, against([0, 25, -40, 9]), 10)).toMatchObject([
      { first: 2, last: 2, fault: 'tight', share: 4 },
      { first: 1, fault: 'wide', share: 2.5 },
    ]);
  });
  it('tell a letter out of place once, at the pairs on both sides of it', () => {
    const misplaced = { kind: 'misplaced', from: 1, to: 2, direction: 'left', sentence: 'L stands too far left.' };
    expect(faultsOf(null, against([0, -30, 30], [misplaced]), 10)).toEqual([
      { first: 1, last: 2, fault: 'left', share: 3, sentence: 'L stands too far left.' },
    ]);
  });
  it('are held against the line itself where there is no reference', () => {
    expect(
      faultsOf(
        measured([
          [0, 5],
          [0, -30],
          [0, null],
        ]),
        null,
        10,
      ),
    ).toMatchObject([{ first: 1, fault: 'wide', share: 3 }]);
  });
  it('name letters that touch before all else', () => {
    expect(
      faultsOf(
        measured([
          [0, 0],
          [0, 0, 'touching'],
        ]),
        against([90, 0]),
        10,
      ).map(({ fault }) => fault),
    ).toEqual(['touching', 'wide']);
  });
  it('is nothing where nothing was measured', () => {
    expect(faultsOf(null, null, 10)).toEqual([]);
  });
});

it('a stock note names the letter in the middle', () => {
  expect(fillStockNote('{letter} stands too far left', ['A', 'L', 'N'], 'left')).toBe('L stands too far left');
  expect(fillStockNote('{letter}', ['A', 'V'], '')).toBe('V');
});

it('letters that the reference lets touch are no fault', () => {
  const meant = { ...against([0, 0]), meantContacts: [1] } as unknown as StoredComparison;
  expect(
    faultsOf(
      measured([
        [0, 0],
        [0, 0, 'touching'],
      ]),
      meant,
      10,
    ),
  ).toEqual([]);
});
