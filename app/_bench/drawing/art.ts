import type { Pack } from '@/shared/schemas/pack';
import { signedArea } from '@/shared/geometry/polygon';
import { prepareLine, type PreparedLine } from '@/shared/measure';

/** The shapes of a line, made once per pack. */
export type LineArt = {
  readonly pack: Pack;
  readonly line: PreparedLine;
  /** One per glyph of the pack, font units, y up. */
  readonly glyphs: readonly Path2D[];
  /** Closed counters of each letter of the line, 1/1000 em, y up; null for a letter without. */
  readonly counters: readonly (Path2D | null)[];
};

const made = new WeakMap<Pack, LineArt>();

export function lineArt(pack: Pack): LineArt {
  const known = made.get(pack);
  if (known) return known;
  const line = prepareLine(pack);
  // Shapes only where something is painted: beside the painter's thread the page needs none of them.
  const glyphs = once(() => pack.glyphs.map((glyph) => new Path2D(glyph.path)));
  const counters = once(() => line.letters.map((letter) => countersOf(letter.contours)));
  const art: LineArt = { pack, line, get glyphs() { return glyphs(); }, get counters() { return counters(); } };
  made.set(pack, art);
  return art;
}

function once<T extends object>(make: () => T): () => T {
  let kept: T | null = null;
  return () => (kept ??= make());
}

/** Contours that run against the largest one are holes: fonts fill by the non-zero rule. */
function countersOf(contours: readonly Float64Array[]): Path2D | null {
  const areas = contours.map(signedArea);
  const outer = areas.reduce((largest, area) => (Math.abs(area) > Math.abs(largest) ? area : largest), 0);
  const holes = contours.filter((_, index) => (areas[index] ?? 0) * outer < 0);
  if (holes.length === 0) return null;
  const path = new Path2D();
  for (const hole of holes) tracePolygon(path, hole);
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
