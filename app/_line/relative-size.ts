import { inPixels } from '@/shared/exercise/sizes';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Size, Spacing } from '@/shared/schemas/spacing';
import type { CssPx, FontUnits } from '@/shared/units';

type Line = { readonly pack: Pack; readonly spacing: Spacing; readonly size: Size };

/**
 * For each line the width of its frame (`room` of LineDrawing) that shows all of them at one scale: drawn in one column,
 * each is as large beside the others as it will be in use.
 */
export function roomsAtOneScale(lines: readonly Line[]): FontUnits[] {
  const widest = widestAtTrueSize(lines);
  return lines.map(({ pack, size }) => (widest / inPixels(size) - ENDS) * pack.unitsPerEm);
}

/**
 * The size at which each line is drawn so that the widest is at most `width`: all in the same proportion, and none
 * larger than true. `share` is that proportion, above 0 and at most 1.
 */
export function sizesWithin(lines: readonly Line[], width: CssPx): { share: number; sizes: Size[] } {
  const widest = widestAtTrueSize(lines);
  const share = widest <= width ? 1 : Math.max(1, Math.floor((100 * width) / widest)) / 100;
  return { share, sizes: lines.map(({ size }) => ({ value: size.value * share, unit: size.unit })) };
}

/** Width of a line at its true size, with the white that a drawing has at both ends. */
const widestAtTrueSize = (lines: readonly Line[]): CssPx =>
  Math.max(
    0,
    ...lines.map(
      ({ pack, spacing, size }) => (placeLetters(pack, spacing).width / pack.unitsPerEm + ENDS) * inPixels(size),
    ),
  );

/** Both ends of a LineDrawing's frame, em. */
const ENDS = 0.08;
