/** Square of the distance from point p to the segment a–b. */
export function pointToSegmentSquared(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax,
    dy = by - ay;
  const lengthSquared = dx * dx + dy * dy;
  const along = lengthSquared === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / lengthSquared));
  const ex = ax + along * dx - px,
    ey = ay + along * dy - py;
  return ex * ex + ey * ey;
}

/** Twice the area of the triangle a b c: above 0 when c is left of a → b. */
export function turn(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/** Whether the segments a–b and c–d cross at an inner point of both; touching at an end is not crossing. */
export function segmentsCross(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): boolean {
  const a = turn(cx, cy, dx, dy, ax, ay),
    b = turn(cx, cy, dx, dy, bx, by);
  const c = turn(ax, ay, bx, by, cx, cy),
    d = turn(ax, ay, bx, by, dx, dy);
  return ((a > 0 && b < 0) || (a < 0 && b > 0)) && ((c > 0 && d < 0) || (c < 0 && d > 0));
}
