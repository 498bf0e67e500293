import { thinned } from '@/shared/geometry/thinned';
import { counters, pairWhite, prepareLine, type Counter } from '@/shared/measure';
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
  readonly edges: (Edges | undefined)[];
  /** The newest white of each gap: a nudge changes one of them only. */
  readonly between: ({ total: number; outline: Outline } | undefined)[];
};

const known = new WeakMap<Pack, Known>();

function knownOf(pack: Pack): Known {
  const kept = known.get(pack) ?? { insides: [], edges: [], between: [] };
  known.set(pack, kept);
  return kept;
}

/**
 * The white between two letters at a total (1/1000 em beyond the sidebearings), from the origin of the left letter.
 * Where the letters cross there is none.
 */
export function whiteBetween(pack: Pack, gap: number, total: number): Outline {
  const kept = knownOf(pack);
  const newest = kept.between[gap];
  if (newest?.total === total) return newest.outline;
  const { left, right } = (kept.edges[gap] ??= edgesOf(pack, gap));
  const line = [...left];
  for (let i = right.length - 2; i >= 0; i -= 2) line.push(Math.max(left[i]!, right[i]! + total), right[i + 1]!);
  const outline = { unit: pack.unitsPerEm / 1000, lines: [line], closed: true };
  kept.between[gap] = { total, outline };
  return outline;
}

/**
 * The white inside one letter of the line. Counted: counters that are closed, and those open between two strokes side by
 * side. Open to one side (c, E): part of the gap too, and counted there.
 */
export function whiteInside(pack: Pack, letter: number): Insides {
  const kept = knownOf(pack);
  const known = kept.insides[letter];
  if (known) return known;
  const found = counters(prepareLine(pack).letters[letter]!);
  const outline = (some: readonly Counter[]): Outline | null =>
    some.length === 0
      ? null
      : {
          unit: pack.unitsPerEm / 1000,
          lines: some.map((counter) => (counter.kind === 'open' ? thinned(counter.outline, FLAT) : counter.outline)),
          closed: true,
        };
  return (kept.insides[letter] = {
    counted: outline(found.filter(({ between }) => between !== 'above-and-below')),
    open: outline(found.filter(({ between }) => between === 'above-and-below')),
  });
}

/** Both edges of the white of a gap from bottom to top, x y x y …, 1/1000 em, at the same heights. */
type Edges = { readonly left: readonly number[]; readonly right: readonly number[] };

/** So far apart that no edge of one letter hides the other's. */
const APART = 10_000;
/** Points nearer than this to the straight way between their neighbours are left out, 1/1000 em. */
const FLAT = 0.6;

/** Both edges of a gap, taken once: an offset only moves the right one. */
function edgesOf(pack: Pack, gap: number): Edges {
  const outline = pairWhite(prepareLine(pack), gap, APART);
  const half = outline.length / 2;
  const right: number[] = [];
  for (let i = outline.length - 2; i >= half; i -= 2) right.push(outline[i]! - APART, outline[i + 1]!);
  return simplified({ left: outline.slice(0, half), right });
}

/** Leaves out heights at which both edges run straight on. */
function simplified({ left, right }: Edges): Edges {
  const keep = [0];
  const count = left.length / 2;
  for (let last = 0, next = 2; next < count; next += 1) {
    if (straight(left, last, next) && straight(right, last, next)) continue;
    last = next - 1;
    keep.push(last);
  }
  keep.push(count - 1);
  const pick = (list: readonly number[]) => keep.flatMap((index) => [list[2 * index]!, list[2 * index + 1]!]);
  return { left: pick(left), right: pick(right) };
}

/** Whether every point between two others lies on the straight way between them. */
function straight(points: readonly number[], from: number, to: number): boolean {
  const [x0, y0, x1, y1] = [points[2 * from]!, points[2 * from + 1]!, points[2 * to]!, points[2 * to + 1]!];
  for (let between = from + 1; between < to; between += 1) {
    const share = y1 === y0 ? 0 : (points[2 * between + 1]! - y0) / (y1 - y0);
    if (Math.abs(points[2 * between]! - (x0 + share * (x1 - x0))) > FLAT) return false;
  }
  return true;
}
