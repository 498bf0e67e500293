import { turn } from './segment';

/** Closed polylines, each x0 y0 x1 y1 …, without the first point repeated at the end. */
export type Contours = Float64Array[];

/** Signed area of one closed polyline, counter-clockwise positive (shoelace formula). */
export function signedArea(points: Float64Array): number {
  let doubled = 0;
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    doubled += points[j]! * points[i + 1]! - points[i]! * points[j + 1]!;
  }
  return doubled / 2;
}

/** How many times the contours wind round a point; ink is where this is not 0 (the non-zero rule, which fonts use). */
export function windingAt(contours: Contours, x: number, y: number): number {
  let winding = 0;
  for (const points of contours) {
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      const y0 = points[j + 1]!,
        y1 = points[i + 1]!;
      if (y0 <= y ? y1 <= y : y1 > y) continue;
      const side = turn(points[j]!, y0, points[i]!, y1, x, y);
      if (y0 <= y && side > 0) winding += 1;
      if (y0 > y && side < 0) winding -= 1;
    }
  }
  return winding;
}

export type Box = { left: number; right: number; bottom: number; top: number };

/** The box round all points; null for an empty outline. */
export function boxOf(contours: Contours): Box | null {
  if (contours.length === 0) return null;
  const box: Box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  for (const points of contours) {
    for (let i = 0; i < points.length; i += 2) {
      box.left = Math.min(box.left, points[i]!);
      box.right = Math.max(box.right, points[i]!);
      box.bottom = Math.min(box.bottom, points[i + 1]!);
      box.top = Math.max(box.top, points[i + 1]!);
    }
  }
  return box;
}
