import { pairWhite } from '@/shared/measure';
import type { LineArt } from './art';

/** Both edges of the white of a gap from bottom to top, x y x y …, 1/1000 em, at the same heights. */
export type Edges = { readonly left: readonly number[]; readonly right: readonly number[] };

const edges = new WeakMap<LineArt, Map<number, Edges>>();
/** So far apart that no edge of one letter hides the other's. */
const APART = 10_000;
/** Points nearer than this to the straight way between their neighbours are left out, 1/1000 em. */
const FLAT = 0.6;

/** Both edges of a gap, taken once: an offset only moves the right one. */
export function whiteEdges(art: LineArt, gap: number): Edges {
  const kept = edges.get(art) ?? new Map<number, Edges>();
  edges.set(art, kept);
  const known = kept.get(gap);
  if (known) return known;
  const outline = pairWhite(art.line, gap, APART);
  const half = outline.length / 2;
  const right: number[] = [];
  for (let i = outline.length - 2; i >= half; i -= 2) right.push(outline[i]! - APART, outline[i + 1]!);
  const made = simplified({ left: outline.slice(0, half), right });
  kept.set(gap, made);
  return made;
}

/** Adds the white at a total; where the letters cross there is none. */
export function traceWhite(path: Path2D, { left, right }: Edges, total: number): void {
  for (let i = 0; i < left.length; i += 2) {
    if (i === 0) path.moveTo(left[0]!, left[1]!);
    else path.lineTo(left[i]!, left[i + 1]!);
  }
  for (let i = right.length - 2; i >= 0; i -= 2) path.lineTo(Math.max(left[i]!, right[i]! + total), right[i + 1]!);
  path.closePath();
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
