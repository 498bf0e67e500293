import type { Fit, Shares } from '@/shared/usual-range/shares';
import type { CorpusFace } from './corpus';
import { foretold, PLAIN_PAIRS } from './judge';

type Acting = { range: Shares; wanted: number; counts: number };

/** A little wide: families differ more than those one happened to choose on. */
const TAIL = 0.036;

/**
 * How far each step of the ranges is stretched so that, over pairs on which designers act, a quarter lies beyond each end
 * of the half range and a twentieth beyond each end of the nine tenths. Worked out on families for choosing.
 */
export function stretchFor(fit: Fit, faces: CorpusFace[]): [number, number, number, number] {
  const plain: Fit = { ...fit, stretch: [1, 1, 1, 1] };
  const acting: Acting[] = faces.flatMap((face) => {
    const relatives = faces.filter(({ family }) => family === face.family).length;
    return foretold(plain, face)
      .slice(0, PLAIN_PAIRS)
      .flatMap((range, i) =>
        range.leftAlone < 0.5 ? [{ range, wanted: face.kern[i]! / face.unit, counts: 1 / relatives }] : [],
      );
  });
  const halfLow = stretchOf(
    acting,
    0.25,
    ({ range, wanted }) => (range.middle - wanted) / (range.middle - range.halfLow),
  );
  const halfHigh = stretchOf(
    acting,
    0.25,
    ({ range, wanted }) => (wanted - range.middle) / (range.halfHigh - range.middle),
  );
  const low = stretchOf(acting, TAIL, ({ range, wanted }) => {
    const from = range.middle - halfLow * (range.middle - range.halfLow);
    return (from - wanted) / (range.halfLow - range.low);
  });
  const high = stretchOf(acting, TAIL, ({ range, wanted }) => {
    const from = range.middle + halfHigh * (range.halfHigh - range.middle);
    return (wanted - from) / (range.high - range.halfHigh);
  });
  return [halfLow, low, halfHigh, high];
}

/** The stretch that a share `beyond` of the pairs would still need more of, between .5 and 2.5. */
function stretchOf(acting: Acting[], beyond: number, needed: (one: Acting) => number): number {
  const sorted = acting.map((one) => ({ value: needed(one), counts: one.counts })).sort((a, b) => b.value - a.value);
  const whole = sorted.reduce((sum, { counts }) => sum + counts, 0);
  let sum = 0;
  for (const { value, counts } of sorted) {
    sum += counts;
    if (sum >= beyond * whole) return Math.round(Math.min(2.5, Math.max(0.5, value)) * 1000) / 1000;
  }
  return 1;
}
