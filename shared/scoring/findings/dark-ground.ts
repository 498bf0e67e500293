import type { Finding } from '@/shared/schemas/measure';
import { typeset } from '../words';
import { makeFinding, pixelsPerMille, type Measured } from './make-finding';

/**
 * Light letters on a dark ground look larger (irradiation; common practice opens them a little). Modelled as each edge
 * moving out by a fifth of a CSS pixel, about a quarter of a minute of arc at reading distance (CSS Values and Units 4, 6.2,
 * gives the pixel 1.28 minutes). The fifth is our own assumption and not measured, so this is a hint and changes no number.
 */
export const SPREAD_PIXELS = 0.2;

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
