import type { UsualRange } from '@/shared/usual-range/range';
import { signed } from '@/shared/text/number';

/** A pair as set beside its usual range: its total apart from the line's tightness, and that tightness, 1/1000 em. */
export type BesideUsual = {
  readonly range: UsualRange;
  readonly total: number;
  readonly tightness: number;
  /** The size it is set at, px. */
  readonly sizePx: number;
};

/**
 * What designers usually do with a pair and what was done here, rounded to 5:
 * `Estimated 60 to 80 closed, at reading sizes; yours 20, apart from the whole line’s −40.`
 */
export function usualWords({ range, total, tightness, sizePx }: BesideUsual): string {
  const [low, high] = [toFive(range.halfLow), toFive(range.halfHigh)];
  const whole = toFive(tightness);
  const apart = whole === 0 ? '' : `, apart from the whole line’s ${signed(whole)}`;
  return [
    `Estimated ${rangeWords(low, high)}, at reading sizes; yours ${yoursWords(toFive(total), low, high)}${apart}.`,
    ...(range.leftAlone > MOST
      ? [`Most faces ${ALONE}`]
      : range.leftAlone >= HALF
        ? [`About half the faces ${ALONE}`]
        : []),
    ...(sizePx >= LARGE ? ['At a size like this, setters often go further.'] : []),
  ].join(' ');
}

/** `AV is wider than designers usually set it.` Too wide or too tight is for a reference or a person to say. */
export const outsideWords = (letters: string, way: 'wider' | 'tighter'): string =>
  `${letters} is ${way} than designers usually set it.`;

/**
 * From these shares of faces on that leave a pair alone it is mentioned; never as a percentage, since it is an
 * estimate.
 */
const HALF = 0.35;
const MOST = 0.65;
const ALONE = 'don’t kern this pair, by choice or omission.';
/** From this size on display setters are known to go beyond what faces are shipped with, px. */
const LARGE = 36;

const toFive = (value: number): number => 5 * Math.floor(value / 5 + 0.5) + 0;

function rangeWords(low: number, high: number): string {
  if (low === 0 && high === 0) return 'neither opened nor closed';
  if (low < 0 && high > 0) return `between ${-low} closed and ${high} opened`;
  const [least, most] = low < 0 ? [-high + 0, -low] : [low, high];
  return `${least === most ? most : `${least} to ${most}`} ${low < 0 ? 'closed' : 'opened'}`;
}

/** The way is named only where it is not that of the range. */
function yoursWords(total: number, low: number, high: number): string {
  if (total === 0) return 'neither';
  const sameWay = total < 0 ? high <= 0 && low < 0 : low >= 0 && high > 0;
  return `${Math.abs(total)}${sameWay ? '' : total < 0 ? ' closed' : ' opened'}`;
}
