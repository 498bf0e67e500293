import type { Contours } from './polygon';

/**
 * Where a level line at height y is inside ink, by the non-zero rule: from, to, from, to … in rising order. A line that
 * only touches a corner meets no ink there.
 */
export function inkRuns(contours: Contours, y: number): number[] {
  const crossings: { x: number; up: number }[] = [];
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      const y0 = points[j + 1]!,
        y1 = points[i + 1]!;
      if (y0 <= y === y1 <= y) continue;
      const x = points[j]! + ((points[i]! - points[j]!) * (y - y0)) / (y1 - y0);
      crossings.push({ x, up: y1 > y0 ? 1 : -1 });
    }
  }
  crossings.sort((a, b) => a.x - b.x);
  const runs: number[] = [];
  let winding = 0;
  for (const { x, up } of crossings) {
    const before = winding;
    winding += up;
    if (before === 0 && runs.length > 0 && x <= runs[runs.length - 1]!) runs.pop();
    else if (before === 0 || winding === 0) runs.push(x);
  }
  return runs;
}

/** The outline with x and y changed over, so that upright lines can be read as level ones. */
export function transposed(contours: Contours): Contours {
  return contours.map((points) => points.map((_, i) => points[i % 2 === 0 ? i + 1 : i - 1]!));
}
