import { type Counter, counters } from '@/shared/measure/counters';
import { pairWhite } from '@/shared/measure/drawing';
import { prepareLine } from '@/shared/measure/prepared-line';
import type { Pack } from '@/shared/schemas/pack';

/**
 * An outline in units of its own (`unit` font units each), y up: path text as packs have it (absolute M L Q C Z), or
 * polylines x0 y0 x1 y1 …. The same object is always the same outline: painters keep what they made of it.
 */
export type Outline =
  | { readonly unit: number; readonly path: string }
  | { readonly unit: number; readonly lines: readonly (readonly number[])[]; readonly closed: boolean };

/** White inside a letter: what the measure counts, and what is open to one side. Null where it has none. */
export type Insides = { readonly counted: Outline | null; readonly open: Outline | null };

type Known = {
  readonly insides: (Insides | undefined)[];
  /** The newest white of each gap: a nudge changes one of them only. */
  readonly between: ({ total: number; outline: Outline } | undefined)[];
};

const known = new WeakMap<Pack, Known>();

function knownOf(pack: Pack): Known {
  const cached = known.get(pack) ?? { insides: [], between: [] };
  known.set(pack, cached);
  return cached;
}

/**
 * The white between two letters at a total (1/1000 em beyond the sidebearings), from the origin of the left letter:
 * exactly what the apparent gap counts.
 */
export function whiteBetween(pack: Pack, gap: number, total: number): Outline {
  const cached = knownOf(pack);
  const newest = cached.between[gap];
  if (newest?.total === total) return newest.outline;
  const line = thinned(pairWhite(prepareLine(pack), gap, total), FLAT);
  const outline = { unit: pack.unitsPerEm / 1000, lines: [line], closed: true };
  cached.between[gap] = { total, outline };
  return outline;
}

/**
 * The white inside one letter of the line. Counted: counters that are closed, and those open between two strokes side
 * by side. Open to one side (c, E): part of the gap too, and counted there.
 */
export function whiteInside(pack: Pack, letter: number): Insides {
  const cached = knownOf(pack);
  const before = cached.insides[letter];
  if (before) return before;
  const found = counters(prepareLine(pack).letters[letter]!);
  const outline = (some: readonly Counter[]): Outline | null =>
    some.length === 0
      ? null
      : {
          unit: pack.unitsPerEm / 1000,
          lines: some.map((counter) => (counter.kind === 'open' ? thinned(counter.outline, FLAT) : counter.outline)),
          closed: true,
        };
  return (cached.insides[letter] = {
    counted: outline(found.filter(({ between }) => between !== 'above-and-below')),
    open: outline(found.filter(({ between }) => between === 'above-and-below')),
  });
}

/** Points nearer than this to the straight way between their neighbours are left out, 1/1000 em. */
const FLAT = 0.6;

/**
 * Drops points of a polyline that are within `tolerance` of the straight line between the last kept point and the next
 * one: a cheap pass for drawing, not for measuring. Points are x0 y0 x1 y1 …; the first and last stay.
 */
export function thinned(points: readonly number[], tolerance: number): number[] {
  const count = points.length / 2;
  if (count < 3) return [...points];
  const kept = [points[0]!, points[1]!];
  let from = 0;
  for (let to = 2; to < count; to += 1) {
    if (fits(points, from, to, tolerance)) continue;
    from = to - 1;
    kept.push(points[2 * from]!, points[2 * from + 1]!);
  }
  kept.push(points.at(-2)!, points.at(-1)!);
  return kept;
}

/** Whether every point between two others is near the straight line from one to the other. */
function fits(points: readonly number[], from: number, to: number, tolerance: number): boolean {
  const x0 = points[2 * from]!,
    y0 = points[2 * from + 1]!;
  const dx = points[2 * to]! - x0,
    dy = points[2 * to + 1]! - y0;
  const length = Math.sqrt(dx * dx + dy * dy);
  for (let i = from + 1; i < to; i += 1) {
    const x = points[2 * i]! - x0,
      y = points[2 * i + 1]! - y0;
    const away = length === 0 ? Math.sqrt(x * x + y * y) : Math.abs(dx * y - dy * x) / length;
    if (away > tolerance) return false;
  }
  return true;
}
