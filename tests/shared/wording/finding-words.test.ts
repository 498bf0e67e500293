import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import type { Finding } from '@/shared/schemas/finding';
import { storedComparisonSchema, storedMeasureSchema } from '@/shared/schemas/stored-figures';
import { findingText, sayFinding, withWords } from '@/shared/wording/finding-words';
import { asShareOf, ordinal, perMilleEm } from '@/shared/wording/lengths';

const onePair = { weight: 'remark', from: 0, to: 0, letters: ['A', 'V'] as [string, string] } as const;
const line = { weight: 'hint', from: null, to: null } as const;
const length = { unit: 'per-mille', beside: { of: 'stems', length: 200 } } as const;

/** The thin space between number and unit is shown as an ordinary one here. */
const said = (finding: Finding) => findingText(finding).replaceAll('\u202F', ' ');

describe('what a finding says', () => {
  const deviation = { kind: 'deviation', ...onePair, ...length, asAnother: false, designersVary: false } as const;
  it('names a pair that is wider than the reference too wide, and one that is narrower too tight', () => {
    expect(said({ ...deviation, value: 20, direction: 'wide' })).toBe(
      'AV is too wide: 20/1000 em more than the reference, overall tracking discounted. That is about a tenth of the white between two stems.',
    );
    expect(said({ ...deviation, value: -35, direction: 'tight' })).toBe(
      'AV is too tight: 35/1000 em less than the reference, overall tracking discounted. That is about a fifth of the white between two stems.',
    );
  });
  it('says where another reference agrees with the student', () => {
    expect(said({ ...deviation, value: 20, direction: 'wide', asAnother: true })).toContain(
      'Another reference has it as here.',
    );
  });
  it('says no “too” where designers vary: the pair is outside the tolerance and inside the usual range', () => {
    expect(said({ ...deviation, value: 20, direction: 'wide', designersVary: true })).toMatch(
      /^AV differs from the reference: 20\/1000 em more than the reference, .* Designers vary here\./,
    );
  });
  it('says wider or tighter than usual without a reference, never “too”', () => {
    const usual = {
      ...onePair,
      ...length,
      kind: 'usual',
      surprise: 2,
      own: 20,
      half: [-80, -60] as [number, number],
    } as const;
    const more = { leftAlone: 0.1, lineTightness: -40, size: { value: 72, unit: 'px' } } as const;
    const wide = { ...usual, ...more, value: 90, direction: 'wide' } as const;
    expect(sayFinding(wide).sentence).toBe('AV is wider than designers usually set it.');
    expect(sayFinding({ ...wide, value: -90, direction: 'tight' }).sentence).toBe(
      'AV is tighter than designers usually set it.',
    );
  });
  it('says of the most open gap that its feet nearly meet, or that designers leave it so', () => {
    const open = { ...onePair, ...length, kind: 'widest', by: 'apparent-gap', value: 60, direction: 'wide' } as const;
    expect(said({ ...open, why: 'near' })).toContain('its letters nearly meet, so it can’t close further');
    expect(said({ ...open, why: 'usual' })).toContain('as designers usually leave it');
  });
  it('says that letters which running text joins have no gap to set', () => {
    const joined = {
      ...onePair,
      kind: 'joined',
      letters: ['f', 'j'] as [string, string],
      value: 0,
      unit: 'per-mille',
      direction: null,
    } as const;
    expect(said(joined)).toBe('Running text joins f and j to one shape, so there is no gap to set here.');
  });
  it('says which way a letter is out of place', () => {
    const misplaced = { kind: 'misplaced', weight: 'remark', from: 0, to: 1, letter: 1, name: 'L', ...length } as const;
    expect(said({ ...misplaced, value: 30, direction: 'right' })).toMatch(/^L is too far right, by 30\/1000 em\./);
    expect(said({ ...misplaced, value: -30, direction: 'left' })).toMatch(/^L is too far left, by 30\/1000 em\./);
  });
  it('says which way the whole line is set', () => {
    const tightness = { kind: 'tightness', ...line, ...length } as const;
    expect(said({ ...tightness, value: 12, direction: 'wide' })).toContain('wider than the reference, by 12/1000 em');
    expect(said({ ...tightness, value: -12, direction: 'tight' })).toContain('tighter than the reference');
  });
  it('tells letters that touch from letters that run into each other', () => {
    const meeting = { ...onePair, value: 0, unit: 'per-mille', direction: 'tight' } as const;
    expect(said({ kind: 'touching', ...meeting })).toBe('A and V touch. If you mean it, say so.');
    expect(said({ kind: 'crossing', ...meeting })).toBe('A and V run into each other.');
  });
  it('tells filling in by the medium: pixels on a screen, millimetres on paper', () => {
    const filling = { kind: 'filling', ...onePair, ...length, unit: 'px', direction: 'tight', clearance: 50 } as const;
    expect(said({ ...filling, value: 0.6, size: { value: 12, unit: 'px' }, smallest: true })).toContain(
      'At 12 px, the smallest size in use, only 0.6 px of ground is left between A and V',
    );
    // 0.1 pt = 0.133 px = 0.035 mm.
    expect(said({ ...filling, value: 0.13, size: { value: 2, unit: 'pt' }, smallest: false })).toContain(
      'At 2 pt only 0.03 mm of paper is left',
    );
  });
  it('names the gap with most white widest and the one with least narrowest', () => {
    const extreme = { ...onePair, ...length, by: 'apparent-gap', why: null } as const;
    expect(said({ kind: 'widest', ...extreme, value: 40, direction: 'wide' })).toContain(
      'looks widest is AV: 40/1000 em more than the middle',
    );
    expect(said({ kind: 'narrowest', ...extreme, value: -40, direction: 'tight' })).toContain(
      'looks narrowest is AV: 40/1000 em less than the middle',
    );
  });
  it('says how a line answered to size: what was done, and what faces do', () => {
    const sizes: [{ value: number; unit: 'px' }, { value: number; unit: 'px' }] = [
      { value: 16, unit: 'px' },
      { value: 128, unit: 'px' },
    ];
    const response = { kind: 'size-response', ...line, sizes, unit: 'per-mille' } as const;
    expect(said({ ...response, done: 20, expected: -30, value: 50, direction: 'wide' })).toMatch(
      /From 16 px to 128 px this line was set 20\/1000 em wider\. .* about 30\/1000 em tighter there/,
    );
    expect(said({ ...response, done: 0, expected: -30, value: 30, direction: 'wide' })).toContain('is spaced alike');
  });
  it('counts gaps from 1', () => {
    const alike = {
      kind: 'set-differently',
      weight: 'remark',
      from: 0,
      to: 2,
      letters: ['H', 'O'] as [string, string],
    };
    expect(said({ ...alike, wide: 2, narrow: 0, value: 20, direction: null, ...length } as Finding)).toContain(
      'the 3rd gap is 20/1000 em wider than the 1st',
    );
    expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 101, 111].map(ordinal)).toEqual(
      '1st 2nd 3rd 4th 11th 12th 13th 21st 22nd 101st 111th'.split(' '),
    );
  });
});

describe('lengths in words', () => {
  it('have no sign, and are held against stems or a counter, never against nothing', () => {
    expect(perMilleEm(-12)).toBe('12/1000\u202Fem');
    expect(asShareOf(58, { of: 'stems', length: 175 })).toBe('about a third of the white between two stems');
    expect(asShareOf(-90, { of: 'counter', length: 175 })).toBe('about half of the white inside an n');
    expect(asShareOf(10, null)).toBeNull();
    expect(asShareOf(10, { of: 'stems', length: 0 })).toBeNull();
  });
});

type Golden = {
  lines: { measure: { findings: { sentence: string; comparison: string | null }[] }; comparison: unknown }[];
};
const golden = (engine: number) =>
  JSON.parse(readFileSync(new URL(`../../fixtures/golden/engine-${engine}.json`, import.meta.url), 'utf8')) as Golden;

describe('what was stored before', () => {
  it('by engine 1, stays readable word for word', () => {
    for (const { measure, comparison } of golden(1).lines) {
      const read = z.parse(storedMeasureSchema, measure);
      expect(read.findings.map(sayFinding)).toEqual(
        measure.findings.map(({ sentence, comparison: size }) => ({ sentence, comparison: size })),
      );
      expect(read.findings.map(withWords)).toMatchObject(read.findings);
      expect(z.parse(storedComparisonSchema, comparison).engine).toBe(1);
    }
  });
  it('by engine 2, holds facts that make sentences, and no sentence', () => {
    expect(JSON.stringify(golden(2))).not.toContain('"sentence"');
    for (const { measure, comparison } of golden(2).lines)
      for (const { findings } of [z.parse(storedMeasureSchema, measure), z.parse(storedComparisonSchema, comparison)])
        for (const finding of findings) {
          expect(finding).not.toHaveProperty('sentence');
          expect(withWords(finding).sentence).toMatch(/^\S.*\.$/);
        }
  });
});
