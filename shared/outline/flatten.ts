import type { Contours } from '@/shared/geometry/polygon';
import type { Command } from './parse-path';

/** Farthest that a chord may lie from its curve, in 1/1000 em: a tenth of what clearance promises (0.5). */
const FLATNESS = 0.05;

/**
 * Turns drawing commands into closed polylines in 1/1000 em.
 * @param scale multiplies the path's numbers, i.e. 1000 / unitsPerEm.
 */
export function flatten(commands: Command[], scale: number): Contours {
  const contours: Contours = [];
  let points: number[] = [];
  const close = () => {
    // A closing point equal to the start would make a segment of no length.
    while (points.length > 2 && points[0] === points[points.length - 2] && points[1] === points[points.length - 1])
      points.length -= 2;
    if (points.length >= 6) contours.push(Float64Array.from(points));
    points = [];
  };
  for (const { letter, numbers } of commands) {
    if (letter === 'Z') {
      close();
      continue;
    }
    const scaled = numbers.map((value) => value * scale);
    if (letter === 'M') {
      close();
      points.push(scaled[0]!, scaled[1]!);
      continue;
    }
    if (letter === 'L') addPoint(points, scaled[0]!, scaled[1]!);
    if (letter === 'Q') addQuadratic(points, scaled);
    if (letter === 'C') addCubic(points, scaled);
  }
  close();
  return contours;
}

function addPoint(points: number[], x: number, y: number) {
  if (points[points.length - 2] === x && points[points.length - 1] === y) return;
  points.push(x, y);
}

/** A quadratic cut into n equal parts strays from its chords by |p0 − 2c + p1| / (4 n²). */
function addQuadratic(points: number[], [cx, cy, x, y]: number[]) {
  const x0 = points[points.length - 2]!,
    y0 = points[points.length - 1]!;
  const bend = length(x0 - 2 * cx! + x!, y0 - 2 * cy! + y!);
  const parts = partsFor(bend / 4);
  for (let i = 1; i <= parts; i += 1) {
    const t = i / parts,
      u = 1 - t;
    addPoint(points, u * u * x0 + 2 * u * t * cx! + t * t * x!, u * u * y0 + 2 * u * t * cy! + t * t * y!);
  }
}

/**
 * A cubic strays from its chords by at most max|second derivative| / (8 n²), and that derivative is 6 times a second
 * difference: 3/4 of it over n².
 */
function addCubic(points: number[], [ax, ay, bx, by, x, y]: number[]) {
  const x0 = points[points.length - 2]!,
    y0 = points[points.length - 1]!;
  const bend = Math.max(length(x0 - 2 * ax! + bx!, y0 - 2 * ay! + by!), length(ax! - 2 * bx! + x!, ay! - 2 * by! + y!));
  const parts = partsFor((bend * 3) / 4);
  for (let i = 1; i <= parts; i += 1) {
    const t = i / parts,
      u = 1 - t;
    const a = u * u * u,
      b = 3 * u * u * t,
      c = 3 * u * t * t,
      d = t * t * t;
    addPoint(points, a * x0 + b * ax! + c * bx! + d * x!, a * y0 + b * ay! + c * by! + d * y!);
  }
}

function partsFor(strayOfOne: number): number {
  return Math.min(64, Math.max(1, Math.floor(Math.sqrt(strayOfOne / FLATNESS)) + 1));
}

function length(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}
