import { createRequire } from 'node:module';
import type paper from 'paper';
import { boxOf, signedArea, type Contours } from '@/shared/geometry/polygon';
import { inkRuns, transposed } from '@/shared/geometry/ink-runs';
import { flatten } from '@/shared/outline/flatten';
import { parsePath } from '@/shared/outline/parse-path';

/** How many level and how many upright lines are drawn through a letter to find and compare its ink. */
const LINES = 48;
const FEW_LINES = 7;
/** The most ink, in 1/1000 em, that a line may gain or lose by whole-number coordinates where contours meet. */
const STRAY = 2;
/** How far whole-number coordinates may put an edge aside, 1/1000 em. */
const ROUNDED = 1;

/**
 * One outline out of contours that overlap (a bowl pushed into its stem, as variable faces have them), so that what is
 * inside a letter is white and what is drawn thin is its edge. Curves stay curves. The ink is compared along lines
 * before and after; where any of it is lost or gained, the letter stays as it was.
 * @param path in whole font units, as packs have it.
 */
export function united(path: string, unitsPerEm: number): string {
  const scale = 1000 / unitsPerEm;
  const before = flatten(parsePath(path), scale);
  if (!overlaps(before)) return path;
  const joined = join(path);
  return joined !== null && sameInk(before, flatten(parsePath(joined), scale)) ? joined : path;
}

/**
 * Whether a line through the letter meets overlapping ink. Where no two contours with the same direction overlap in
 * their boxes, only a contour could overlap itself, and a few lines show that.
 */
export function overlaps(contours: Contours): boolean {
  if (contours.length === 0) return false;
  const lines = someMayMeet(contours) ? LINES : FEW_LINES;
  return [contours, transposed(contours)].some((turned) => levels(turned, lines).some((y) => deepest(turned, y) > 1));
}

function someMayMeet(contours: Contours): boolean {
  const known = contours.map((points) => ({ ...boxOf([points])!, way: signedArea(points) > 0 }));
  return known.some((a, i) =>
    known
      .slice(i + 1)
      .some((b) => a.way === b.way && a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top),
  );
}

/** How often contours wind round a point of a level line, at most. */
function deepest(contours: Contours, y: number): number {
  const crossings: { x: number; up: number }[] = [];
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      const y0 = points[j + 1]!,
        y1 = points[i + 1]!;
      if (y0 <= y === y1 <= y) continue;
      crossings.push({ x: points[j]! + ((points[i]! - points[j]!) * (y - y0)) / (y1 - y0), up: y1 > y0 ? 1 : -1 });
    }
  }
  crossings.sort((a, b) => a.x - b.x);
  let winding = 0,
    most = 0;
  crossings.forEach(({ x, up }, i) => {
    winding += up;
    // Edges that lie on one another are crossed at once.
    const next = crossings[i + 1];
    if (next !== undefined && next.x - x > 0.5) most = Math.max(most, Math.abs(winding));
  });
  return most;
}

/** Along every line as much ink as before. */
function sameInk(before: Contours, after: Contours): boolean {
  return [before, transposed(before)].every((turned, way) => {
    const other = way === 0 ? after : transposed(after);
    return levels(turned).every((y) => {
      // A line that runs along an edge meets another length of ink a unit beside it: any of those will do.
      const wanted = [-ROUNDED, 0, ROUNDED].map((aside) => inkAlong(turned, y + aside));
      const found = inkAlong(other, y);
      return found >= Math.min(...wanted) - STRAY && found <= Math.max(...wanted) + STRAY;
    });
  });
}

function inkAlong(contours: Contours, y: number): number {
  return inkRuns(contours, y).reduce((sum, x, i) => sum + (i % 2 === 0 ? -x : x), 0);
}

/** Heights spread over a letter, none at a round share of it, where edges would lie. */
function levels(contours: Contours, count = LINES): number[] {
  const box = boxOf(contours)!;
  return Array.from({ length: count }, (_, i) => box.bottom + ((i + 0.4142) / count) * (box.top - box.bottom));
}

type Paper = typeof import('paper');
let loaded: Paper | undefined;

/** The union by paper.js, its geometry alone; null where nothing is left. */
function join(path: string): string | null {
  if (loaded === undefined) {
    loaded = createRequire(import.meta.url)('paper/dist/paper-core.js') as Paper;
    loaded.setup(new loaded.Size(1, 1));
  }
  const item = new loaded.CompoundPath({ pathData: path, insert: false, fillRule: 'nonzero' });
  // Without a second outline its own overlaps are resolved.
  const made = item.unite(undefined as unknown as paper.PathItem, { insert: false });
  const contours = made instanceof loaded.CompoundPath ? (made.children as paper.Path[]) : [made as paper.Path];
  const text = contours.map(contourPath).join('');
  return text === '' ? null : text;
}

/** Absolute commands in whole units; pieces that shrink to a point are left out. */
function contourPath({ curves }: paper.Path): string {
  const at = ({ x, y }: paper.Point) => `${Math.round(x) + 0} ${Math.round(y) + 0}`;
  if (curves.length < 2) return '';
  const pieces = curves.flatMap((curve) => {
    if (curve.isStraight()) return at(curve.point1) === at(curve.point2) ? [] : [`L${at(curve.point2)}`];
    const [from, first, second, to] = curve.points as [paper.Point, paper.Point, paper.Point, paper.Point];
    return at(from) === at(to) && at(first) === at(from) && at(second) === at(to)
      ? []
      : [`C${at(first)} ${at(second)} ${at(to)}`];
  });
  return pieces.length < 2 ? '' : `M${at(curves[0]!.point1)}${pieces.join('')}Z`;
}
