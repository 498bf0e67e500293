import { inPixels, smallestInUse } from '@/shared/exercise/sizes';
import type { Finding, PairMeasure } from '@/shared/schemas/measure';
import type { Size } from '@/shared/schemas/spacing';
import { asShareOfStemGap, betweenLetters, typeset } from '@/shared/wording/lengths';
import { makeFinding, type Measured, pixelsPerMille } from './measured';

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

/** Two letters that read as one when they stand close (common practice), and the letter they are taken for. */
const MISTAKABLE: Record<string, string> = { rn: 'm', cl: 'd', vv: 'w', ri: 'n' };

/** Nearer than this share of the stem gap the two begin to close up. Our own figure. */
const CLOSE = 0.35;

/** Letters so close that they may be read as another letter. Only this finding knows letters by name, since reading does. */
export function mistakableFindings({ pairs, line }: Measured): Finding[] {
  const { stemGap } = line;
  if (stemGap === null) return [];
  return pairs.flatMap((pair) => {
    const other = MISTAKABLE[pair.left + pair.right];
    if (other === undefined || pair.wordSpace > 0 || pair.clearance >= CLOSE * stemGap) return [];
    return [
      makeFinding({
        kind: 'mistakable',
        weight: 'hint',
        from: pair.index,
        value: pair.clearance,
        direction: 'tight',
        sentence: `Between “${pair.left}” and “${pair.right}” there is so little room that the two may be read as “${other}”.`,
        comparison: asShareOfStemGap(pair.clearance, stemGap),
      }),
    ];
  });
}

/**
 * Light letters on a dark ground look larger (irradiation; common practice opens them a little). Modelled as each edge
 * moving out by a fifth of a CSS pixel, about a quarter of a minute of arc at reading distance (CSS Values and Units 4, 6.2,
 * gives the pixel 1.28 minutes). The fifth is our own assumption and not measured, so this is a hint and changes no number.
 */
const SPREAD_PIXELS = 0.2;

/** Under this, 1/1000 em, the spread is nothing to speak of at the size. */
const WORTH_SAYING = 2;

export function darkGroundFindings(measured: Measured): Finding[] {
  if (measured.ground !== 'dark' || measured.pairs.length === 0) return [];
  const taken = (2 * SPREAD_PIXELS) / pixelsPerMille(measured);
  if (taken < WORTH_SAYING) return [];
  return [
    makeFinding({
      kind: 'dark-ground',
      weight: 'hint',
      value: -taken,
      direction: 'tight',
      sentence: `On a dark ground light letters look a little larger, and at this size each gap looks about ${typeset(taken)} thousandths of an em narrower than it is (an estimate).`,
    }),
  ];
}
