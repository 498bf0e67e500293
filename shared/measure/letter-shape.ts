import { boxOf, type Box } from '@/shared/geometry/polygon';
import { segmentChunks, type SegmentChunks } from '@/shared/geometry/segment-chunks';
import { edgeProfile, type EdgeProfile } from '@/shared/outline/edge-profile';
import { flatten, type Contours } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';
import { sighted } from '@/shared/outline/sight-line';
import type { SideKind } from '@/shared/schemas/measure';
import { areaProfile } from './area';
import { MeasureError } from './errors';
import { sideKind } from './side-kind';

/** One letter made ready for measuring; all lengths in 1/1000 em. */
export type LetterShape = {
  advance: number;
  contours: Contours;
  box: Box;
  chunks: SegmentChunks;
  /** Edge profile as drawn, and as seen under the sight line. */
  edge: EdgeProfile;
  seen: EdgeProfile;
  /** Fine profile that area is summed over. */
  fine: EdgeProfile;
  /** The kind of each side. */
  sides: { left: SideKind; right: SideKind };
};

/**
 * @param letter its path and advance in font units, and its cluster for the error's words.
 * @throws MeasureError `no-outline` when there is no ink to measure.
 */
export function letterShape(
  letter: { cluster: string; path: string; advance: number },
  unitsPerEm: number,
  bands: number,
): LetterShape {
  const scale = 1000 / unitsPerEm;
  const contours = flatten(parsePath(letter.path), scale);
  const box = boxOf(contours);
  if (!box)
    throw new MeasureError(
      'no-outline',
      `The letter “${letter.cluster}” has no outline in this face, so the gaps beside it cannot be measured. Choose another letter or another face.`,
      letter.cluster,
    );
  const advance = letter.advance * scale;
  const edge = edgeProfile(contours, advance, bands);
  return {
    advance,
    contours,
    box,
    chunks: segmentChunks(contours),
    edge,
    seen: { left: sighted(edge.left), right: sighted(edge.right) },
    fine: areaProfile(contours, advance),
    sides: { left: sideKind(edge.left, box.right - box.left), right: sideKind(edge.right, box.right - box.left) },
  };
}
