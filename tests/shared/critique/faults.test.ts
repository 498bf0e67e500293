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
    expect(faultsOf(null, against([0, 25, -40, 9]))).toMatchObject([
      { first: 2, last: 2, fault: 'tight', share: 4 },
      { first: 1, fault: 'wide', share: 2.5 },
    ]);
  });
  it('tell a letter out of place once, at the pairs on both sides of it', () => {
    const misplaced = { kind: 'misplaced', from: 1, to: 2, direction: 'left', sentence: 'L stands too far left.' };
    expect(faultsOf(null, against([0, -30, 30], [misplaced]))).toEqual([
      { first: 1, last: 2, fault: 'left', share: 3, sentence: 'L stands too far left.' },
    ]);
  });
  it('are those outside the usual range where there is no reference, the greatest surprise first', () => {
    const usual = (from: number, direction: 'wide' | 'tight') => ({
      kind: 'usual',
      from,
      to: from,
      direction,
      letters: ['A', 'V'],
    });
    const measure = {
      pairs: [0.4, 1.6, -2.5].map((surprise, index) => ({ index, surprise, contact: 'apart' })),
      findings: [usual(1, 'wide'), usual(2, 'tight'), { kind: 'widest', from: 0, to: 0, direction: 'wide' }],
    } as unknown as StoredMeasure;
    expect(faultsOf(measure, null)).toMatchObject([
      { first: 2, last: 2, fault: 'tight', share: 2.5 },
      { first: 1, last: 1, fault: 'wide', share: 1.6 },
    ]);
    expect(faultsOf(measure, null)[0]!.sentence).toBe('AV is tighter than designers usually set it.');
  });
  it('are only letters that touch in what the first engine measured without a reference', () => {
    const said = {
      kind: 'widest',
      weight: 'fact',
      from: 0,
      to: 0,
      direction: 'wide',
      sentence: 'Widest.',
      comparison: null,
    };
    const measure = {
      ...measured([
        [0, -90],
        [0, 0, 'touching'],
      ]),
      findings: [said],
    } as unknown as StoredMeasure;
    expect(faultsOf(measure, null)).toMatchObject([{ first: 1, fault: 'touching' }]);
  });
  it('name letters that touch before all else', () => {
    expect(
      faultsOf(
        measured([
          [0, 0],
          [0, 0, 'touching'],
        ]),
        against([90, 0]),
      ).map(({ fault }) => fault),
    ).toEqual(['touching', 'wide']);
  });
  it('is nothing where nothing was measured', () => {
    expect(faultsOf(null, null)).toEqual([]);
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
    ),
  ).toEqual([]);
});
