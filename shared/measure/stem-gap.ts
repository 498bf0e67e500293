import { heightOfBand } from '@/shared/outline/edge-profile';
import type { LetterShape } from './letter-shape';

/** Horizontal white between H and H as the face sets them, 1/1000 em. */
export type StemGaps = {
  /** The least white: between serif tips where there are serifs. */
  stemGap: number;
  /** From stem to stem, clear of serifs and bar. */
  stemToStem: number;
};

/** Null for an H outside the heights looked at. */
export function stemGaps(H: LetterShape): StemGaps | null {
  let stemGap = Infinity;
  H.edge.right.forEach((white, band) => (stemGap = Math.min(stemGap, white + H.edge.left[band]!)));
  if (stemGap === Infinity) return null;
  return { stemGap, stemToStem: stemToStem(H, 0.65, 0.8) ?? stemGap };
}

/**
 * The most white between a letter and the same letter again, between two heights given as shares of its top: where H
 * has neither serif nor bar, or n neither serif nor arch. Null where it has no ink there.
 */
export function stemToStem({ edge, box }: LetterShape, low: number, high: number): number | null {
  let most = -Infinity;
  edge.right.forEach((white, band) => {
    const height = heightOfBand(band),
      gap = white + edge.left[band]!;
    if (height > box.top * low && height < box.top * high && gap < Infinity) most = Math.max(most, gap);
  });
  return most === -Infinity ? null : most;
}
