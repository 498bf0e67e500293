import { KERNED, type Fit, type Shares, type Stretch } from '@/shared/usual-range/shares';
import type { CorpusFace } from './corpus';
import { ALONE, TAUGHT } from './fit-net';
import { foretold } from './judge';

type Acting = { range: Shares; wanted: number; counts: number; taught: boolean };

/**
 * The share of designers left beyond each end of the nine tenths. A little wide: families differ more than those seen
 * here.
 */
const TAIL = 0.03;

/**
 * How far each step of the ranges is stretched so that, over pairs on which designers act, a quarter is beyond each end
 * of the half range and a twentieth beyond each end of the nine tenths. Computed separately for pairs that nearly all
 * designers kern, on those found in every course on kerning, where leaving a pair alone is an omission; and for the
 * others.
 */
export function stretchFor(fit: Pick<Fit, 'nets'>, faces: CorpusFace[]): Fit['stretch'] {
  const plain: Fit = { ...fit, stretch: { kerned: [1, 1, 1, 1], mixed: [1, 1, 1, 1] } };
  const acting: Acting[] = faces.flatMap((face) => {
    const relatives = faces.filter(({ family }) => family === face.family).length;
    return foretold(plain, face).flatMap((range, i) => {
      if (range.leftAlone >= 0.5) return [];
      const taught = TAUGHT.includes(face.letters[face.left[i]!]! + face.letters[face.right[i]!]!);
      return [{ range, wanted: face.kern[i]! / face.unit, counts: 1 / relatives, taught }];
    });
  });
  const between = (KERNED.most + KERNED.none) / 2;
  return {
    kerned: stretchesOver(acting.filter(({ taught, wanted }) => taught && Math.abs(wanted) >= ALONE)),
    mixed: stretchesOver(acting.filter(({ range }) => range.leftAlone >= between)),
  };
}

function stretchesOver(acting: Acting[]): Stretch {
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

/** The stretch that a share `beyond` of the pairs would still need more of, between .2 and 2.5. */
function stretchOf(acting: Acting[], beyond: number, needed: (one: Acting) => number): number {
  const sorted = acting.map((one) => ({ value: needed(one), counts: one.counts })).sort((a, b) => b.value - a.value);
  const whole = sorted.reduce((sum, { counts }) => sum + counts, 0);
  let sum = 0;
  for (const { value, counts } of sorted) {
    sum += counts;
    if (sum >= beyond * whole) return Math.round(Math.min(2.5, Math.max(0.2, value)) * 1000) / 1000;
  }
  return 1;
}
