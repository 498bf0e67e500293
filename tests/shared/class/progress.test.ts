import { describe, expect, it } from 'vitest';
import type { MapLine, MapRow } from '@/shared/class/map';
import { roundProgress } from '@/shared/class/progress';

const row = (memberId: string, tenths: (number | null)[], more: Partial<MapRow> = {}): MapRow => ({
  memberId,
  proofId: `proof ${memberId}`,
  tracking: 0,
  offsets: tenths.map(() => 0),
  against: 0,
  author: null,
  tightness: 0,
  evenness: 0.1,
  tenths,
  ...more,
});
const line = (version: string, rows: MapRow[]): MapLine => ({
  version: 1,
  specimenVersionId: version,
  specimenId: 's',
  text: 'HOLT',
  letters: ['H', 'O', 'L', 'T'],
  tolerances: [[8, 8, 8]],
  setId: null,
  rows,
});
const asIs = (pair: number) => pair;

// Expected values by hand.
describe('progress from round to round', () => {
  it('takes the median of each student and its middle over the class', () => {
    const [one] = roundProgress(
      [line('v', [row('a', [100, -20, 30]), row('b', [0, 50, -70]), row('c', [null, 90, 10], { evenness: 0.3 })])],
      [],
      asIs,
    ).lines;
    // 10 2 3 → 3; 0 5 7 → 5; 9 1 → 5.
    expect(one).toMatchObject({ students: 3, deviation: { median: 5, lower: 4, upper: 5 }, moved: null });
    expect(one!.evenness!.median).toBeCloseTo(10, 9);
    expect(one!.evenness!.upper).toBeCloseTo(20, 9);
  });

  it('counts pairs that came nearer, went farther or stayed, of those who set the line both times', () => {
    const before = [line('v', [row('a', [100, -20, 30]), row('b', [0, 0, 0])])];
    const now = [line('v', [row('a', [-50, 40, -30]), row('c', [10, 10, 10])])];
    expect(roundProgress(now, before, asIs).lines[0]!.moved).toEqual({ nearer: 1, farther: 1, same: 1 });
  });

  it('follows pairs into a later version of the line and leaves out those that are gone', () => {
    const moved = roundProgress(
      [line('v2', [row('a', [10, 60, 5])])],
      [line('v1', [row('a', [20, 50, 5])])],
      (pair) => [1, null, 2][pair] ?? null,
    ).lines[0]!.moved;
    expect(moved).toEqual({ nearer: 0, farther: 1, same: 1 });
  });

  it('holds nothing against a line without references', () => {
    const alone = row('a', [100, 20, 30], { against: null });
    expect(roundProgress([line('v', [alone])], [line('v', [alone])], asIs).lines[0]).toMatchObject({
      deviation: null,
      moved: null,
    });
  });
});
