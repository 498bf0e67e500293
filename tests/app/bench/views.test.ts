import { describe, expect, it } from 'vitest';
import { RULER_HEIGHT } from '@/app/_bench/drawing/sizes';
import { planViews } from '@/app/_bench/drawing/views';
import type { SpacingDocument } from '@/shared/editing/document';

const offsets = new Array<number>(8).fill(0);
const document: SpacingDocument = { tracking: 0, offsets };
const asked = (zoom: number) => ({
  room: null,
  zoom,
  atTrue: false,
  history: { steps: [document], cursor: 0, gesture: null },
  overlay: null,
  overlayMode: 'under' as const,
});
/** A line of the length of a few words, and a short one that the height limits. */
const long = { widthEm: 8, reachEm: 0.8, trueEm: 72 };
const short = { widthEm: 2, reachEm: 0.8, trueEm: 72 };
const rooms = [200, 240, 300, 420, 700].map((height) => ({ width: 890, height }));
const phone = { width: 390, height: null };

describe('a working view that is larger for one person', () => {
  for (const [name, line] of Object.entries({ long, short }))
    it(`is really that many times the usual one, with the whole line still shown: a ${name} line`, () => {
      for (const room of [...rooms, phone])
        for (const times of [1.25, 1.5, 2, 4]) {
          const usual = planViews(line, room, asked(1));
          const larger = planViews(line, room, asked(times), { workingView: times });
          expect(larger.working / usual.working).toBeCloseTo(times, 6);
          if (!larger.fits) expect(larger.above! * line.widthEm).toBeLessThanOrEqual(room.width);
        }
    });

  it('is measured against what all others see, also where this person alone has the ruler', () => {
    for (const line of [long, short])
      for (const room of rooms) {
        const others = planViews(line, room, asked(1));
        const left = { ...room, height: room.height - RULER_HEIGHT };
        const own = planViews(line, left, asked(2), { workingView: 2, rulerOfOwn: true });
        expect(own.working / others.working).toBeCloseTo(2, 6);
      }
  });

  it('leaves the line that is not larger within the sheet, and steps evenly between', () => {
    const left = { width: 890, height: 320 };
    const person = { workingView: 2, rulerOfOwn: true };
    expect(planViews(short, left, asked(1), person)).toEqual(planViews(short, left, asked(1)));
    const steps = [1, 1.25, 1.5, 1.75, 2].map((zoom) => planViews(short, left, asked(zoom), person).working);
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
  });

  it('leaves room for itself: the line above it is smaller, never gone', () => {
    const room = { width: 890, height: 290 };
    expect(planViews(long, room, asked(1)).above).toBe(72);
    const { above, working } = planViews(long, room, asked(2), { workingView: 2 });
    expect(above).toBeGreaterThanOrEqual(24);
    expect(above).toBeLessThan(72);
    // Letters, what is around both views, and the label.
    expect(long.reachEm * (above! + working) + 44 + 20 + 44).toBeLessThanOrEqual(290 + 1e-6);
  });
});
