import type { LetterShape } from './letter-shape';
import { heightOfBand } from '@/shared/outline/edge-profile';

/** Horizontal white between H and H as the face sets them, 1/1000 em; null for an H outside the heights looked at. */
export type StemGaps = {
  /** The least white: between serif tips where there are serifs. */
  stemGap: number;
  /** From stem to stem: the white at half the height of H's upper half, clear of serifs and bar. */
  stemToStem: number;
};

export function stemGaps(H: LetterShape): StemGaps | null {
  let stemGap = Infinity;
  const open: number[] = [];
  H.edge.right.forEach((white, band) => {
    const gap = white + H.edge.left[band]!;
    stemGap = Math.min(stemGap, gap);
    const height = heightOfBand(band);
    if (height > H.box.top * 0.65 && height < H.box.top * 0.8) open.push(gap);
  });
  if (stemGap === Infinity) return null;
  let stemToStem = 0;
  for (const gap of open) stemToStem = Math.max(stemToStem, gap);
  return { stemGap, stemToStem: open.length === 0 ? stemGap : stemToStem };
}
