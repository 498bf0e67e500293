import { inPixels } from '@/shared/exercise/sizes';
import type { Size } from '@/shared/schemas/spacing';
import type { CssPx } from '@/shared/units';
import { NOMINAL_PX_PER_MM } from '../session/screen';

/** 1 pt = 1/72 in = 25.4/72 mm and, where the screen was not measured, 1 px = 1/96 in (CSS Values and Units 4, 6.2). */
export function sizeInPx(size: Size, pxPerMm = NOMINAL_PX_PER_MM): CssPx {
  return size.unit === 'pt' ? ((size.value * 25.4) / 72) * pxPerMm : size.value;
}

/** Height of the ruler under the line, CSS px. */
export const RULER_HEIGHT = 92;

/**
 * Em of the working view: fits the whole line if that is large enough to work on; otherwise large, with the line
 * running out of view.
 */
export function workingEm(lineWidthEm: number, trueEm: CssPx, width: CssPx, zoom: number): CssPx {
  const large = width < 560 ? 120 : 150;
  const fitting = (width - 48) / lineWidthEm;
  const usual = fitting >= large ? Math.min(fitting, 2.2 * large) : large;
  return Math.max(36, Math.min(1600, Math.max(usual, trueEm) * zoom));
}

/**
 * Sizes of the ladder below the true one. Where the exercise names a smallest size of use, they step down evenly to it,
 * and it is the last; otherwise each is about two thirds of the one before, down to 12 px. Five at most.
 */
export function ladderSizes(size: Size, smallest: Size | null = null): Size[] {
  const last = smallest && inPixels(smallest) < inPixels(size) ? smallest : null;
  const ratio = last ? inPixels(size) / inPixels(last) : Infinity;
  const count = last
    ? Math.min(MOST_RUNGS, Math.max(1, Math.ceil(Math.log(ratio) / Math.log(STEP) - 0.01)))
    : MOST_RUNGS;
  const step = last ? ratio ** (1 / count) : STEP;
  const least = size.unit === 'pt' ? 9 : 12;
  const sizes: Size[] = [];
  for (
    let value = size.value / step;
    sizes.length < (last ? count - 1 : count) && (last || value >= least);
    value /= step
  )
    sizes.push({ value: Math.round(value), unit: size.unit });
  return last ? [...sizes, last] : sizes;
}

const STEP = 1.5;
const MOST_RUNGS = 5;
