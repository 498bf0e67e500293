import { type Box, boxOf, type Contours } from '@/shared/geometry/polygon';
import { segmentChunks, type SegmentChunks } from '@/shared/geometry/segment-chunks';
import { drawnEdges, seenEdges, type EdgeProfile, type Heights } from '@/shared/outline/edge-profile';
import { flatten } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';
import { straightened } from '@/shared/outline/slant';
import type { SideKind } from '@/shared/schemas/measure';
import { MeasureError } from '../measure-error';
import { sideKinds } from './side-kind';

/** One letter made ready for measuring; all lengths in 1/1000 em. */
export type LetterShape = {
  advance: number;
  /** As drawn: what clearance is measured on. */
  contours: Contours;
  box: Box;
  chunks: SegmentChunks;
  /** The slant of its face, and the letter set upright by it: what sides, gaps, area and counters are read from. */
  slant: number;
  upright: { contours: Contours; box: Box };
  heights: Heights;
  /** Both edges along the slant, as drawn and as seen under the sight line. */
  edge: EdgeProfile;
  seen: EdgeProfile;
  /** The kind of each side. */
  sides: { left: SideKind; right: SideKind };
};

/**
 * @param letter its path and advance in font units, and its cluster for the error's words.
 * @throws MeasureError `no-outline` when there is no ink to measure.
 */
export function letterShape(
  letter: { cluster: string; path: string; advance: number },
  { unitsPerEm, heights, slant = 0 }: { unitsPerEm: number; heights: Heights; slant?: number },
): LetterShape {
  const scale = 1000 / unitsPerEm;
  const contours = flatten(parsePath(letter.path), scale);
  const upright = straightened(contours, slant);
  const box = boxOf(contours),
    uprightBox = slant === 0 ? box : boxOf(upright);
  if (!box || !uprightBox)
    throw new MeasureError(
      'no-outline',
      `The letter “${letter.cluster}” has no outline in this face, so the gaps beside it cannot be measured. Choose another letter or another face.`,
      letter.cluster,
    );
  const advance = letter.advance * scale;
  const edge = drawnEdges(upright, advance, heights.bands);
  // What only some callers ask for is made when they do: reading a face's own kerning makes many letters.
  let seen: EdgeProfile | undefined, sides: LetterShape['sides'] | undefined;
  return {
    advance,
    contours,
    box,
    chunks: segmentChunks(contours),
    slant,
    upright: { contours: upright, box: uprightBox },
    heights,
    edge,
    get seen() {
      return (seen ??= seenEdges(upright, advance, heights));
    },
    get sides() {
      return (sides ??= sideKinds(upright, uprightBox));
    },
  };
}
