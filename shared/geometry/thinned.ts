/**
 * Leaves out points of a polyline that lie within `tolerance` of the straight line between the last kept point and the
 * next one: a cheap walk for drawing, not for measuring. Points are x0 y0 x1 y1 …; the first and last stay.
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

/** Whether every point between two others lies near the straight line from one to the other. */
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
