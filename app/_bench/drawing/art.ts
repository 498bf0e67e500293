import type { Pack } from '@/shared/schemas/pack';
import { thinned } from '@/shared/geometry/thinned';
import { counters, prepareLine, type Counter, type PreparedLine } from '@/shared/measure';

/** The shapes of a line, made once per pack. */
export type LineArt = {
  readonly pack: Pack;
  readonly line: PreparedLine;
  /** One per glyph of the pack, font units, y up. */
  readonly glyphs: readonly Path2D[];
  /** White inside each letter of the line. */
  readonly insides: readonly Insides[];
};

/** White inside a letter in 1/1000 em, y up; null where it has none. */
export type Insides = { readonly counted: Path2D | null; readonly aside: Path2D | null };

const made = new WeakMap<Pack, LineArt>();

export function lineArt(pack: Pack): LineArt {
  const known = made.get(pack);
  if (known) return known;
  const line = prepareLine(pack);
  // Shapes only where something is painted: beside the painter's thread the page needs none of them.
  const glyphs = once(() => pack.glyphs.map((glyph) => new Path2D(glyph.path)));
  const insides = once(() => line.letters.map(insidesOf));
  const art: LineArt = {
    pack,
    line,
    get glyphs() {
      return glyphs();
    },
    get insides() {
      return insides();
    },
  };
  made.set(pack, art);
  return art;
}

function once<T extends object>(make: () => T): () => T {
  let kept: T | null = null;
  return () => (kept ??= make());
}

/** The counters that the measure counts (closed, or open between two strokes side by side), and those open to one side. */
function insidesOf(letter: PreparedLine['letters'][number]): Insides {
  const found = counters(letter);
  return {
    counted: pathOf(found.filter(({ between }) => between !== 'above-and-below')),
    aside: pathOf(found.filter(({ between }) => between === 'above-and-below')),
  };
}

/** Points nearer than this to the straight way between their neighbours are left out, 1/1000 em. */
const FLAT = 0.6;

function pathOf(found: readonly Counter[]): Path2D | null {
  if (found.length === 0) return null;
  const path = new Path2D();
  for (const { outline, kind } of found) tracePolygon(path, kind === 'open' ? thinned(outline, FLAT) : outline);
  return path;
}

/** Adds a closed polygon x0 y0 x1 y1 … to a path. */
export function tracePolygon(path: Path2D, points: ArrayLike<number>): void {
  for (let i = 0; i + 1 < points.length; i += 2) {
    if (i === 0) path.moveTo(points[0]!, points[1]!);
    else path.lineTo(points[i]!, points[i + 1]!);
  }
  path.closePath();
}
