import { inPixels, smallestInUse } from '@/shared/exercise/sizes';
import type { Finding, PairMeasure } from '@/shared/schemas/measure';
import type { Size } from '@/shared/schemas/spacing';
import { asShareOfStemGap, betweenLetters, typeset } from '../words';
import { makeFinding, type Measured } from './make-finding';

/**
 * Under this distance letters are likely to run together in the medium: three quarters of a pixel on a screen, where edges
 * are blurred over one; 0.05 mm on paper, where ink spreads a little at every edge. Both are our own cautious figures.
 */
const LEAST_PIXELS = 0.75;
const LEAST_MILLIMETRES = 0.05;
const MILLIMETRES_PER_PIXEL = 25.4 / 96;

/** Touching, crossing, and filling in at the size and medium of the line, or at the smallest size in use. */
export function contactFindings(measured: Measured): Finding[] {
  return measured.pairs.flatMap((pair) => {
    if (pair.contact === 'crossing') return [crossing(pair)];
    if (pair.contact === 'touching') return [touching(pair)];
    return filling(measured, pair);
  });
}

function crossing(pair: PairMeasure): Finding {
  return makeFinding({
    kind: 'crossing',
    weight: 'remark',
    from: pair.index,
    value: pair.clearance,
    direction: 'tight',
    sentence: `“${pair.left}” and “${pair.right}” run into each other.`,
    comparison: null,
  });
}

function touching(pair: PairMeasure): Finding {
  return makeFinding({
    kind: 'touching',
    weight: 'remark',
    from: pair.index,
    value: pair.clearance,
    direction: 'tight',
    sentence: `“${pair.left}” and “${pair.right}” touch. If that is meant, say so.`,
  });
}

function filling(measured: Measured, pair: PairMeasure): Finding[] {
  const size = smallestInUse(measured.size, measured.smallestSize);
  const left = groundLeft(pair.clearance, size);
  if (!left) return [];
  return [
    makeFinding({
      kind: 'filling',
      weight: 'hint',
      from: pair.index,
      value: left.pixels,
      unit: 'px',
      direction: 'tight',
      sentence: `At ${typeset(size.value, 1)}\u2009${size.unit}${size === measured.size ? '' : ', the smallest size in use,'} only ${left.words} ${betweenLetters(pair.left, pair.right)}, and it may fill in.`,
      comparison: asShareOfStemGap(pair.clearance, measured.line.stemGap),
    }),
  ];
}

/** What is left between two letters at a size, where it is so little that it may fill in; null where it is enough. */
export function groundLeft(clearance: number, size: Size): { pixels: number; words: string } | null {
  const pixels = (clearance * inPixels(size)) / 1000;
  const onPaper = size.unit === 'pt';
  const distance = onPaper ? pixels * MILLIMETRES_PER_PIXEL : pixels;
  if (distance >= (onPaper ? LEAST_MILLIMETRES : LEAST_PIXELS)) return null;
  return {
    pixels,
    words: onPaper
      ? `${typeset(distance, 2)}\u2009mm of paper is left`
      : `${typeset(distance, 1)}\u2009px of ground is left`,
  };
}
