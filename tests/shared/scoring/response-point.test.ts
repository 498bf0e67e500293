import { describe, expect, it } from 'vitest';
import { measureLine, responsePoint } from '@/shared/scoring';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const pack = drawnPack('HOHOHOH');
const point = (
  value: number,
  unit: 'px' | 'pt',
  tracking: number,
  drawnFor: { from: number; to: number } | null = null,
) =>
  responsePoint({
    measure: measureLine(
      pack,
      { tracking, offsets: pack.builtIn.map(() => 0) },
      { size: { value, unit }, ground: 'light' },
    ),
    family: 'Drawn',
    weight: 400,
    drawnFor,
  });

/**
 * −10 a doubling above 16 px and +15 a halving below, from optical-size axes (shared/scoring/response.ts); the band by
 * hand.
 */
describe('responsePoint', () => {
  it.each([
    [16, 'px', 0, -12, 12],
    [32, 'px', -10, -22, 2],
    [64, 'px', -20, -40, 0],
    [8, 'px', 15, 0, 30],
    [24, 'pt', -10, -22, 2],
  ] as const)('expects at %s %s %s, from %s to %s', (value, unit, expected, lower, upper) => {
    expect(point(value, unit, 0)).toMatchObject({ expected, lower, upper, readingFace: true });
  });
  it('expects nothing inside the sizes that a face is drawn for', () => {
    expect(point(64, 'px', 0, { from: 36, to: 96 })).toMatchObject({
      expected: 0,
      lower: -12,
      upper: 12,
      readingFace: false,
    });
  });
  it('says what was added, and gaps as shares of the face’s own stem gap', () => {
    const built = point(64, 'px', 0),
      set = point(64, 'px', -18);
    expect([built.added, set.added]).toEqual([0, -18]);
    expect(built.gap).toBe(built.asBuilt);
    expect(built.share).toBe(built.gap! / built.stemGap!);
    expect(set.shareAsBuilt).toBe(built.share);
    expect(set.share!).toBeLessThan(built.share!);
  });
});
