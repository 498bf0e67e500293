import { boxOf, type Contours } from '@/shared/geometry/polygon';
import { inkRuns } from '@/shared/geometry/ink-runs';
import { median } from '@/shared/stats/median';

/** A slant is how far a stem leans to the right for each unit of height: the tangent of its angle, 0 for an upright. */

/** Leaning less than this (about one degree) is drawing, not slant. */
const LEAST = 0.02;

/**
 * The heights of a letter, as shares of its own, between which its outer edges are stems: clear of serifs and arches.
 */
const STEMS = { H: [0.2, 0.8], n: [0.15, 0.55] } as const;

/** Slant of a face by the outer edges of its H or n, each way the median of many pieces; 0 for an upright. */
export function stemSlant(letter: keyof typeof STEMS, contours: Contours): number {
  const box = boxOf(contours);
  if (box === null || box.top <= box.bottom) return 0;
  const [low, high] = STEMS[letter];
  const height = box.top - box.bottom;
  const edges = Array.from({ length: 41 }, (_, i) => {
    const y = box.bottom + (low + ((high - low) * i) / 40) * height;
    const ink = inkRuns(contours, y);
    return { y, left: ink[0], right: ink[ink.length - 1] };
  }).filter((edge): edge is { y: number; left: number; right: number } => edge.left !== undefined);
  if (edges.length < 21) return 0;
  const half = Math.floor(edges.length / 2);
  const lean = (side: 'left' | 'right') =>
    median(edges.slice(half).map((edge, i) => (edge[side] - edges[i]![side]) / (edge.y - edges[i]!.y)));
  const slant = (lean('left') + lean('right')) / 2;
  return Math.abs(slant) < LEAST ? 0 : slant;
}

/** The outline set upright: every level line moved back by what the slant has moved it. */
export function straightened(contours: Contours, slant: number): Contours {
  if (slant === 0) return contours;
  return contours.map((points) => points.map((value, i) => (i % 2 === 0 ? value - slant * points[i + 1]! : value)));
}
