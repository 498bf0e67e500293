import { describe, expect, it } from 'vitest';
import { MeasureError } from '@/shared/measure-error';
import { compareLine, measureLine } from '@/shared/scoring';
import { lineMeasureSchema, lineComparisonSchema } from '@/shared/schemas/measure';
import { packSchema } from '@/shared/schemas/pack';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const at = { size: { value: 96, unit: 'px' }, ground: 'light' } as const;

describe('measureLine', () => {
  it('gives two plain stems the gap between them, by hand', () => {
    const pack = drawnPack('IIIIII');
    packSchema.parse(pack);
    const line = measureLine(pack, { tracking: 0, offsets: [0, 0, 0, 0, 0] }, at);
    // Stems 60 + 60 apart over 0–700; above and below the sight line opens by 1.5 a unit, so from 700 to the top of d
    // there is more than 120.
    expect(line.pairs[0]!.clearance).toBe(120);
    expect(line.pairs[0]!.apparentGap).toBeGreaterThan(120);
    expect(line.pairs[0]!.apparentGap).toBeLessThan(125);
    // The same white as an area: as high as from the baseline to the top of d, 740.
    expect(line.pairs[0]!.area).toBeCloseTo((line.pairs[0]!.apparentGap * 740) / 1000, 1);
    expect(line.line.stemGap).toBe(120);
    lineMeasureSchema.parse(line);
  });

  it('suggests the offset that brings a pair to the centre of its line', () => {
    const pack = drawnPack('IIIIIII');
    const line = measureLine(pack, { tracking: 0, offsets: [0, 0, 40, 0, 0, 0] }, at);
    expect(line.pairs[2]!.suggestion).toBe(0);
    expect(line.pairs[1]!.suggestion).toBe(0);
  });

  it('refuses offsets of the wrong length and those that are no numbers, quoting them', () => {
    const pack = drawnPack('HO');
    expect(() => measureLine(pack, { tracking: 0, offsets: [] }, at)).toThrow(MeasureError);
    expect(() => measureLine(pack, { tracking: 0, offsets: [Number.NaN] }, at)).toThrow(/“NaN”/);
    expect(() => measureLine(pack, { tracking: 0, offsets: [0.5] }, at)).toThrow(/“0.5”/);
  });
});

describe('compareLine', () => {
  const pack = drawnPack('HOnoHO');
  const reference = (offsets: number[], tracking = 0) => ({
    author: 'A',
    tracking,
    offsets,
    tolerances: [8, 8, 8, 8, 8],
    reasons: [null, null, null, null, null],
  });

  it('takes out tightness, and tells a letter out of place as one remark', () => {
    const line = measureLine(pack, { tracking: 12, offsets: [0, 30, -30, 0, 0] }, at);
    const comparison = compareLine(line, [reference([0, 0, 0, 0, 0])]);
    expect(comparison.tightness).toBe(12);
    expect(comparison.pairs.map((pair) => pair.rest)).toEqual([0, 30, -30, 0, 0]);
    expect(comparison.findings.map((finding) => finding.kind)).toEqual(['tightness', 'misplaced']);
    expect(comparison.outside).toBe(1);
    lineComparisonSchema.parse(comparison);
  });

  it('compares with the nearest of several', () => {
    const line = measureLine(pack, { tracking: 0, offsets: [0, 0, 0, 0, -40] }, at);
    const comparison = compareLine(line, [reference([0, 0, 0, 0, 0]), reference([0, 0, 0, 0, -38])]);
    expect(comparison.nearest).toBe(1);
    expect(comparison.findings.map((finding) => finding.kind)).toEqual(['agreement', 'within']);
  });
});
