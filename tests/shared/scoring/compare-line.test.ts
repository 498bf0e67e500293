import { describe, expect, it } from 'vitest';
import type { LineMeasure, ReferenceSpacing } from '@/shared/schemas/measure';
import { compareLine, leastTolerance, measureLine } from '@/shared/scoring';
import { misplacedLetters } from '@/shared/scoring/misplaced-letters';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const px = (value: number) => ({ value, unit: 'px' as const });

/** Eight stems: seven equal gaps, so every difference is the setter's. */
const line = (offsets: Record<number, number>, tracking = 0, size = px(96)): LineMeasure =>
  measureLine(
    drawnPack('IIIIIIII'),
    { tracking, offsets: [0, 1, 2, 3, 4, 5, 6].map((index) => offsets[index] ?? 0) },
    { size, ground: 'light' },
  );
const reference = (given: Partial<ReferenceSpacing> = {}): ReferenceSpacing => ({
  author: 'A',
  tracking: 0,
  offsets: [0, 0, 0, 0, 0, 0, 0],
  tolerances: [10, 10, 10, 10, 10, 10, 10],
  reasons: [null, null, null, null, null, null, null],
  ...given,
});
const found = (...given: Parameters<typeof compareLine>) =>
  compareLine(...given).findings.map(({ kind, from, direction }) => [kind, from, direction]);

describe('a pair beside the reference', () => {
  it('is too wide where more was added than the reference has, and too tight where less', () => {
    expect(found(line({ 2: 20 }), [reference()])).toEqual([['deviation', 2, 'wide']]);
    expect(found(line({ 2: -20 }), [reference()])).toEqual([['deviation', 2, 'tight']]);
  });
  it('is within tolerance up to the tolerance itself', () => {
    expect(compareLine(line({ 2: 10 }), [reference()]).pairs[2]).toMatchObject({ rest: 10, within: true });
    expect(compareLine(line({ 2: 11 }), [reference()]).pairs[2]).toMatchObject({ rest: 11, within: false });
  });
  it('is held to the tolerance of its own pair', () => {
    const wide = reference({ tolerances: [10, 10, 25, 10, 10, 10, 10] });
    expect(found(line({ 2: 20, 4: 20 }), [wide])).toEqual([['deviation', 4, 'wide']]);
  });
  it('is said to be as another reference has it', () => {
    const other = reference({ author: 'B', offsets: [90, 0, 20, -90, 0, 0, 0] });
    const { findings, nearest } = compareLine(line({ 2: 20 }), [reference(), other]);
    expect(nearest).toBe(0);
    expect(findings.find(({ kind }) => kind === 'deviation')).toMatchObject({ from: 2, asAnother: true });
  });
});

describe('the line beside the reference', () => {
  it('takes its tightness from what most pairs share, and says which way it is set', () => {
    const comparison = compareLine(line({ 2: 20 }, 30), [reference()]);
    expect(comparison.tightness).toBe(30);
    expect(comparison.findings.map(({ kind, direction }) => [kind, direction])).toEqual([
      ['tightness', 'wide'],
      ['deviation', 'wide'],
    ]);
    expect(found(line({}, -30), [reference()])[0]).toEqual(['tightness', null, 'tight']);
  });
  it('takes it from tracking alone under six letter pairs, so that a pair’s own miss stays its own', () => {
    const short = measureLine(drawnPack('II'), { tracking: 5, offsets: [40] }, { size: px(96), ground: 'light' });
    const comparison = compareLine(short, [
      reference({ tracking: 2, offsets: [0], tolerances: [10], reasons: [null] }),
    ]);
    expect(comparison.tightness).toBe(3);
    expect(comparison.pairs[0]).toMatchObject({ deviation: 43, rest: 40, within: false });
  });
  it('is compared with the reference it strays least from', () => {
    const near = reference({ author: 'near', offsets: [0, 0, 18, 0, 0, 0, 0] });
    expect(compareLine(line({ 2: 20 }), [reference(), near])).toMatchObject({ nearest: 1, author: 'near' });
    expect(compareLine(line({ 2: 20 }), [near, reference()])).toMatchObject({ nearest: 0, author: 'near' });
  });
  it('is said to be within tolerance where nothing is outside', () => {
    expect(found(line({ 2: 10 }), [reference()])).toEqual([['within', null, null]]);
  });
  it('says where the references themselves are further apart than both tolerances', () => {
    const other = reference({ author: 'B', offsets: [0, 0, 21, 0, 0, 0, 0] });
    expect(found(line({}), [reference(), other])).toEqual([
      ['agreement', 2, null],
      ['within', null, null],
    ]);
    const closer = reference({ author: 'B', offsets: [0, 0, 20, 0, 0, 0, 0] });
    expect(found(line({}), [reference(), closer])).toEqual([['within', null, null]]);
  });
});

describe('the least tolerance', () => {
  it('is 10, or half a pixel, or 0.05 mm on paper', () => {
    expect(leastTolerance(px(96))).toBe(10);
    // Half of 1/25 em.
    expect(leastTolerance(px(25))).toBe(20);
    // 12 pt are 4.2333 mm; 0.05 mm of that are 11.8/1000.
    expect(leastTolerance({ value: 12, unit: 'pt' })).toBe(12);
  });
  it('takes the place of a finer one', () => {
    const fine = reference({ tolerances: [2, 2, 2, 2, 2, 2, 2] });
    expect(found(line({ 2: 9 }), [fine])).toEqual([['within', null, null]]);
    expect(compareLine(line({ 2: 19 }, 0, px(25)), [fine]).pairs[2]).toMatchObject({ tolerance: 20, within: true });
  });
});

describe('a letter out of place', () => {
  it('is too far right where the gap before it is too wide and the one after too tight; and left the other way', () => {
    expect(compareLine(line({ 2: 30, 3: -30 }), [reference()]).findings).toMatchObject([
      { kind: 'misplaced', from: 2, to: 3, letter: 3, direction: 'right', value: 30 },
    ]);
    expect(compareLine(line({ 2: -30, 3: 30 }), [reference()]).findings).toMatchObject([
      { kind: 'misplaced', from: 2, to: 3, letter: 3, direction: 'left', value: -30 },
    ]);
  });
  it('counts once', () => {
    expect(compareLine(line({ 2: 30, 3: -30 }), [reference()]).outside).toBe(1);
    expect(compareLine(line({ 1: 30, 5: -30 }), [reference()]).outside).toBe(2);
  });
  const gap = (rest: number, tolerance: number) => ({ rest, tolerance, within: Math.abs(rest) <= tolerance });
  it('is found where the two tolerances differ: the shift that brings each gap within its own', () => {
    // By hand: the sum left over is 30 − 12 = 18; tolerances of 8 and 10 absorb it, a shift of 22 exactly.
    expect(misplacedLetters(3, [gap(30, 8), gap(-12, 10)])).toEqual([{ letter: 1, shift: 22 }]);
    expect(misplacedLetters(3, [gap(30, 7), gap(-12, 10)])).toEqual([]);
    expect(misplacedLetters(3, [gap(-12, 10), gap(30, 8)])).toEqual([{ letter: 1, shift: -22 }]);
  });
  it('shares what is left evenly where it can', () => {
    expect(misplacedLetters(3, [gap(30, 10), gap(-24, 10)])).toEqual([{ letter: 1, shift: 27 }]);
  });
  it('is none where both gaps err the same way, or one is fine', () => {
    expect(misplacedLetters(3, [gap(30, 10), gap(30, 10)])).toEqual([]);
    expect(misplacedLetters(3, [gap(30, 10), gap(-10, 10)])).toEqual([]);
  });
  it('explains no gap twice: the greater shift goes first', () => {
    const gaps = [gap(20, 8), gap(-30, 8), gap(34, 8)];
    expect(misplacedLetters(4, gaps)).toEqual([{ letter: 2, shift: -32 }]);
  });
});

describe('a reference that does not fit the line', () => {
  it('is refused with the value that is wrong', () => {
    const refused = (wrong: Partial<ReferenceSpacing>) => () => compareLine(line({}), [reference(wrong)]);
    expect(refused({ offsets: [0] })).toThrow(/7 gaps, but the reference by A has 1 offsets/);
    expect(refused({ tolerances: [8, 8] })).toThrow(/has 2 tolerances/);
    expect(refused({ tracking: 0.5 })).toThrow(/“0.5”/);
    expect(refused({ tolerances: [10, 10, 10, 10, 10, 10, -1] })).toThrow(/“-1”/);
    expect(refused({ tolerances: [10, 10, 10, 10, 10, 10, Infinity] })).toThrow(/“Infinity”/);
  });
});
