import { describe, expect, it } from 'vitest';
import { compareLine, reportLine, expectedResponse, responseHints } from '@/shared/scoring';
import type { Finding } from '@/shared/schemas/finding';
import type { Ground, Size } from '@/shared/schemas/spacing';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const px = (value: number): Size => ({ value, unit: 'px' });
const measured = (
  text: string,
  offsets: Record<number, number> = {},
  size: Size = px(96),
  ground: Ground = 'light',
  tracking = 0,
) => {
  const pack = drawnPack(text);
  return reportLine(pack, { tracking, offsets: pack.builtIn.map((_, index) => offsets[index] ?? 0) }, { size, ground });
};
const kinds = (findings: Finding[]) => findings.map(({ kind }) => kind);

/** Stems of I are 120 apart as drawn (60 + 60), so every expected distance is arithmetic by hand. */
describe('contact', () => {
  it('tells apart stems that touch (120 − 120 = 0) and stems that run into each other (120 − 121)', () => {
    expect(kinds(measured('II', { 0: -120 }).findings)).toContain('touching');
    expect(kinds(measured('II', { 0: -121 }).findings)).toContain('crossing');
    expect(kinds(measured('II', { 0: -110 }).findings)).not.toContain('touching');
  });
  it('warns of filling in by size and medium: 50/1000 em is 0.6 px at 12 px and 2.4 px at 48 px', () => {
    expect(kinds(measured('II', { 0: -70 }, px(12)).findings)).toContain('filling');
    expect(kinds(measured('II', { 0: -70 }, px(48)).findings)).not.toContain('filling');
    // 50/1000 em of 12 pt is 0.6 pt = 0.21 mm of paper; 10/1000 em is 0.04 mm.
    expect(kinds(measured('II', { 0: -70 }, { value: 12, unit: 'pt' }).findings)).not.toContain('filling');
    expect(kinds(measured('II', { 0: -110 }, { value: 12, unit: 'pt' }).findings)).toContain('filling');
  });
  it('warns of filling in at the smallest size in use, and says so', () => {
    const at = (smallestSize: Size | null) =>
      reportLine(
        drawnPack('II'),
        { tracking: 0, offsets: [-70] },
        { size: px(48), ground: 'light', smallestSize },
      ).findings.find(({ kind }) => kind === 'filling');
    expect(at(null)).toBeUndefined();
    expect(at(px(96))).toBeUndefined();
    expect(at(px(12))).toMatchObject({
      value: 0.6,
      size: px(12),
      smallest: true,
    });
    // 50/1000 em of 2 pt is 0.1 pt = 0.133 px, 0.035 mm of paper.
    expect(at({ value: 2, unit: 'pt' })).toMatchObject({ value: 0.13, size: { value: 2, unit: 'pt' } });
  });
  it('takes a touch for meant where the reference touches as well', () => {
    const line = measured('III', { 0: -120 });
    const reference = { author: 'A', tracking: 0, offsets: [-120, 0], tolerances: [8, 8], reasons: [null, null] };
    expect(compareLine(line, [reference]).meantContacts).toEqual([0]);
    expect(compareLine(line, [{ ...reference, offsets: [0, 0] }]).meantContacts).toEqual([]);
  });
});

describe('a line by itself', () => {
  it('names widest and narrowest from five pairs on, each once and by apparent gap, and only lists gaps under that', () => {
    const line = measured('IIIIIII', { 1: 30, 4: -20 });
    const named = line.findings.filter(({ kind }) => kind === 'widest' || kind === 'narrowest');
    expect(named.map(({ kind, from }) => [kind, from])).toEqual([
      ['widest', 1],
      ['narrowest', 4],
    ]);
    expect(kinds(measured('III').findings)).toEqual(expect.arrayContaining(['gap', 'gap']));
    expect(line.line.evennessGap).toBe(0);
  });
  it('sees the same two letters set differently: 20 apart, and not 4 apart', () => {
    const found = measured('HOHOHO', { 0: 0, 2: 20 }).findings.find(({ kind }) => kind === 'set-differently');
    expect(found).toMatchObject({ from: 0, to: 2, value: 20 });
    expect(kinds(measured('HOHOHO', { 2: 4 }).findings)).not.toContain('set-differently');
  });
  it('says what is tight for the face, and what a dark ground takes', () => {
    expect(measured('HOHOHOH').findings.find(({ kind }) => kind === 'tightness-face')).toMatchObject({
      value: 0,
      direction: null,
    });
    expect(
      measured('HOHOHOH', {}, px(96), 'light', -40).findings.find(({ kind }) => kind === 'tightness-face'),
    ).toMatchObject({ direction: 'tight' });
    // Two edges of 0.2 px each at 40 px: 10/1000 em.
    expect(measured('HOHO', {}, px(40), 'dark').findings.find(({ kind }) => kind === 'dark-ground')).toMatchObject({
      value: -10,
      weight: 'hint',
    });
    expect(kinds(measured('HOHO', {}, px(40), 'light').findings)).not.toContain('dark-ground');
  });
  it('reminds that lines of capitals are usually opened (common practice)', () => {
    expect(kinds(measured('HOVOHOH').findings)).toContain('capitals');
    expect(kinds(measured('HOVOHOH', {}, px(96), 'light', 30).findings)).not.toContain('capitals');
    expect(kinds(measured('Honno').findings)).not.toContain('capitals');
  });
  it('holds a word space against other word spaces only', () => {
    const line = measured('HO HO HOH');
    expect(line.pairs.map(({ group }) => group)).toEqual([
      'capitals',
      'word-space',
      'capitals',
      'word-space',
      'capitals',
      'capitals',
    ]);
    expect(line.pairs[1]!.suggestion).toBeNull();
    expect(measured('HO HO HOH', { 3: 120 }).findings.find(({ kind }) => kind === 'word-spaces-differ')).toMatchObject({
      from: 3,
    });
  });
});

describe('response to size, by the one rule', () => {
  it('is −10 a doubling above 16 px and +15 a halving below, by hand', () => {
    expect(expectedResponse(16, null)).toBe(0);
    expect(expectedResponse(64, null)).toBe(-20);
    expect(expectedResponse(8, null)).toBe(15);
    expect(expectedResponse(48, { from: 24, to: 72 })).toBe(0);
    expect(expectedResponse(144, { from: 24, to: 72 })).toBe(-10);
  });
  it('hints where a line was opened at a large size, and not where it was tightened as faces are', () => {
    const at = (size: number, tracking: number) => ({
      measure: measured('HOnnoH', {}, px(size), 'light', tracking),
      family: 'Drawn',
      weight: 400,
      drawnFor: null,
    });
    expect(responseHints([at(16, 0), at(128, 20)])).toMatchObject([
      { first: 0, second: 1, finding: { kind: 'size-response', direction: 'wide', value: 50 } },
    ]);
    expect(responseHints([at(16, 0), at(128, -25)])).toEqual([]);
  });
  it('hints where offsets were copied onto a bolder weight', () => {
    const of = (weight: number) => ({
      measure: measured('HOnnoH', { 0: -20 }),
      family: 'Drawn',
      weight,
      drawnFor: null,
    });
    expect(responseHints([of(400), of(700)])).toHaveLength(1);
    expect(responseHints([of(400), of(400)])).toEqual([]);
  });
});
