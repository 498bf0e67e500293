import { describe, expect, it } from 'vitest';
import { clearance } from '@/shared/measure/clearance';
import { letterShape } from '@/shared/measure/letter-shape';
import { measureLine } from '@/shared/scoring';
import { heightsUpTo } from '@/shared/outline/edge-profile';
import { drawnPack } from '@/tests/fixtures/drawn-pack';

const at = { size: { value: 96, unit: 'px' }, ground: 'light' } as const;
const shape = (path: string, advance = 220) =>
  letterShape({ cluster: 'x', path, advance }, { unitsPerEm: 1000, heights: heightsUpTo(740) });
const box = (left: number, bottom: number, right: number, top: number) =>
  `M${left} ${bottom}L${right} ${bottom}L${right} ${top}L${left} ${top}Z`;
const stem = shape(box(60, 0, 160, 700));

/** By hand: a stem from 60 to 160 of 220; the right letter's origin is `shift` to the right. */
describe('clearance', () => {
  it('is the distance between facing edges', () => {
    expect(clearance(stem, stem, 220)).toEqual({ distance: 120, crossing: false });
    expect(clearance(stem, stem, 150)).toEqual({ distance: 50, crossing: false });
  });
  it('is taken slantwise where no edges face: 30 to the side and 40 up are 50', () => {
    const low = shape(box(0, 0, 100, 300)),
      high = shape(box(0, 340, 100, 700));
    expect(clearance(low, high, 130)).toEqual({ distance: 50, crossing: false });
  });
  it('is 0 and no crossing where edges just touch', () => {
    expect(clearance(stem, stem, 100)).toEqual({ distance: 0, crossing: false });
  });
  it('is 0 and a crossing where outlines lie over one another, by however little or much', () => {
    for (const shift of [99, 60, 0, -40]) expect(clearance(stem, stem, shift)).toEqual({ distance: 0, crossing: true });
  });
  it('parts again on the other side: a right letter wholly to the left stands apart from it', () => {
    expect(clearance(stem, stem, -150)).toEqual({ distance: 50, crossing: false });
  });
  it('sees a dot that lies wholly inside a stroke, either way round, though no edges meet', () => {
    const dot = shape(box(0, 300, 40, 340));
    expect(clearance(stem, dot, 90)).toEqual({ distance: 0, crossing: true });
    expect(clearance(dot, stem, -30)).toEqual({ distance: 0, crossing: true });
  });
  it('does not take a dot inside a counter for ink', () => {
    const ring = shape(`${box(0, 0, 400, 400)}M100 100L100 300L300 300L300 100Z`);
    const dot = shape(box(0, 180, 40, 220));
    expect(clearance(ring, dot, 180)).toEqual({ distance: 80, crossing: false });
  });
  it('names contact by it: apart, near within a fifth of the stem gap, touching under 1, crossing', () => {
    // H H are 120 apart, so near begins under 24.
    const contacts = [-95, -97, -119, -120, -121].map(
      (offset) => measureLine(drawnPack('II'), { tracking: 0, offsets: [offset] }, at).pairs[0]!.contact,
    );
    expect(contacts).toEqual(['apart', 'near', 'near', 'touching', 'crossing']);
  });
});

describe('directions', () => {
  it('a wider setting has a wider gap, more white and more clearance; its suggestion is to take back what was added', () => {
    const pack = drawnPack('IIIIIIIII');
    const set = (offset: number) =>
      measureLine(pack, { tracking: 0, offsets: pack.builtIn.map((_, i) => (i === 3 ? offset : 0)) }, at).pairs[3]!;
    const [tight, even, wide] = [set(-30), set(0), set(30)];
    for (const figure of ['apparentGap', 'area', 'clearance', 'total'] as const) {
      expect(tight![figure], figure).toBeLessThan(even![figure]);
      expect(wide![figure], figure).toBeGreaterThan(even![figure]);
    }
    // Suggested is the offset itself, not the change: back to 0 from either side.
    expect([tight!.suggestion, even!.suggestion, wide!.suggestion]).toEqual([0, 0, 0]);
  });
  it('tracking is left as it is when an offset is suggested', () => {
    const pack = drawnPack('IIIIIIIII');
    const { pairs } = measureLine(pack, { tracking: 25, offsets: pack.builtIn.map((_, i) => (i === 3 ? -40 : 0)) }, at);
    expect(pairs[3]!.suggestion).toBe(0);
    expect(pairs[3]!.total).toBe(-15);
  });
  it('the sides of a pair are the right one of its left letter and the left one of its right letter', () => {
    const { pairs } = measureLine(drawnPack('OIO'), { tracking: 0, offsets: [0, 0] }, at);
    expect(pairs.map(({ sides }) => sides)).toEqual([
      { left: 'round', right: 'straight' },
      { left: 'straight', right: 'round' },
    ]);
  });
});
