import { inMillimetres, inPixels, smallestInUse } from '@/shared/exercise/sizes';
import { round2 } from '@/shared/measure/round';
import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure, PairMeasure } from '@/shared/schemas/measure';
import type { Size } from '@/shared/schemas/spacing';
import { atPair, WHOLE_LINE, yardstickOf } from './measured';

/**
 * Under this distance letters are likely to run together in the medium: three quarters of a pixel on a screen, where
 * edges are blurred over one; 0.05 mm on paper, where ink spreads a little at every edge. Both are our own cautious
 * figures.
 */
const LEAST_PIXELS = 0.75;
const LEAST_MILLIMETRES = 0.05;

/** Touching, crossing, and filling in at the size and medium of the line, or at the smallest size in use. */
export function contactFindings(measured: LineMeasure): Finding[] {
  return measured.pairs.flatMap((pair): Finding[] =>
    pair.contact === 'crossing' || pair.contact === 'touching'
      ? [meeting(pair, pair.contact)]
      : filling(measured, pair),
  );
}

function meeting(pair: PairMeasure, kind: 'touching' | 'crossing'): Finding {
  return {
    kind,
    weight: 'remark',
    ...atPair(pair),
    value: round2(pair.clearance),
    unit: 'per-mille',
    direction: 'tight',
  };
}

function filling(measured: LineMeasure, pair: PairMeasure): Finding[] {
  const size = smallestInUse(measured.size, measured.smallestSize);
  const left = groundLeft(pair.clearance, size);
  if (left === null) return [];
  return [
    {
      kind: 'filling',
      weight: 'hint',
      ...atPair(pair),
      size,
      smallest: size !== measured.size,
      clearance: pair.clearance,
      value: round2(left),
      unit: 'px',
      direction: 'tight',
      beside: yardstickOf(measured),
    },
  ];
}

/**
 * What is left between two letters at a size, in px, where it is so little that it may fill in; null where it is
 * enough.
 */
export function groundLeft(clearance: number, size: Size): number | null {
  const pixels = (clearance * inPixels(size)) / 1000;
  const enough = size.unit === 'pt' ? inMillimetres(pixels) >= LEAST_MILLIMETRES : pixels >= LEAST_PIXELS;
  return enough ? null : pixels;
}

/** Two letters that read as one when they are close (common practice), and the letter they are taken for. */
const MISTAKABLE: Record<string, string> = { rn: 'm', cl: 'd', vv: 'w', ri: 'n' };

/** Nearer than this share of the stem gap the two begin to close up. Our own figure. */
const CLOSE = 0.35;

/**
 * Letters so close that they may be read as another letter. Only this finding knows letters by name, since reading
 * does.
 */
export function mistakableFindings(measured: LineMeasure): Finding[] {
  const { stemGap } = measured.line;
  if (stemGap === null) return [];
  return measured.pairs.flatMap((pair): Finding[] => {
    const readAs = MISTAKABLE[pair.left + pair.right];
    if (readAs === undefined || pair.wordSpace > 0 || pair.clearance >= CLOSE * stemGap) return [];
    return [
      {
        kind: 'mistakable',
        weight: 'hint',
        ...atPair(pair),
        readAs,
        value: round2(pair.clearance),
        unit: 'per-mille',
        direction: 'tight',
        beside: yardstickOf(measured),
      },
    ];
  });
}

/**
 * Light letters on a dark ground look larger (irradiation; common practice opens them a little). Modelled as each edge
 * moving out by a fifth of a CSS pixel, about a quarter of a minute of arc at reading distance (CSS Values and Units 4,
 * 6.2, gives the pixel 1.28 minutes). The fifth is our own assumption and not measured, so this is a hint and changes
 * no number.
 */
const SPREAD_PIXELS = 0.2;

/** Below this, 1/1000 em, the spread doesn't matter at the size. */
const WORTH_SAYING = 2;

export function darkGroundFindings({ ground, pairs, size }: LineMeasure): Finding[] {
  if (ground !== 'dark' || pairs.length === 0) return [];
  const taken = (2 * SPREAD_PIXELS * 1000) / inPixels(size);
  if (taken < WORTH_SAYING) return [];
  return [
    {
      kind: 'dark-ground',
      weight: 'hint',
      ...WHOLE_LINE,
      value: round2(-taken),
      unit: 'per-mille',
      direction: 'tight',
    },
  ];
}
