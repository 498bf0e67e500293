import { seenGap, totalForGap } from '@/shared/measure/apparent-gap';
import { clearance } from '@/shared/measure/clearance';
import type { LetterShape } from '@/shared/measure/letter-shape';

/** A designer's tightening stops where the letters would come nearer than this share of the stem gap. */
const LEAST_CLEARANCE = 0.45;

/**
 * The kerning that a designer would be expected to ship for reading sizes, 1/1000 em: about 20 units of openness are
 * let pass, 70 % of the rest is taken away, and pairs are almost never opened (fitted; see DEVELOPERS.md).
 */
export function predictKerning(left: LetterShape, right: LetterShape, reference: number, stemGap: number): number {
  const total = totalForGap(seenGap(left.seen.right, right.seen.left), reference);
  if (total === null) return 0;
  const stopped = Math.max(total, tightest(left, right, LEAST_CLEARANCE * stemGap, total));
  return stopped < -20 ? 0.7 * (stopped + 20) : 0;
}

/** The total at which the clearance is just `least`, looked for between `from` and 0; 0 where it is under that already. */
function tightest(left: LetterShape, right: LetterShape, least: number, from: number): number {
  const clear = (total: number) => clearance(left, right, left.advance + total).distance >= least;
  if (from >= 0 || clear(from)) return from;
  if (!clear(0)) return 0;
  let low = from, high = 0;
  for (let turn = 0; turn < 12; turn++) {
    const middle = (low + high) / 2;
    if (clear(middle)) high = middle;
    else low = middle;
  }
  return high;
}
