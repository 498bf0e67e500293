import type { Command } from './parse-path';

/**
 * Exact signed area of an outline, in the square of the path's units, contours added with their own sign (holes run the
 * other way round and take away). From Green's theorem, ½∮(x dy − y dx), worked out for Bézier curves: the cross
 * products of control points with weights that follow from the Bernstein polynomials. No flattening.
 */
export function outlineArea(commands: Command[]): number {
  let area = 0,
    startX = 0,
    startY = 0,
    x = 0,
    y = 0;
  for (const { letter, numbers } of commands) {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
    if (letter === 'M') {
      area += cross(x, y, startX, startY) / 2;
      [x, y, startX, startY] = [a, b, a, b];
    } else if (letter === 'L') {
      area += cross(x, y, a, b) / 2;
      [x, y] = [a, b];
    } else if (letter === 'Q') {
      area += (2 * cross(x, y, a, b) + cross(x, y, c, d) + 2 * cross(a, b, c, d)) / 6;
      [x, y] = [c, d];
    } else if (letter === 'C') {
      area +=
        (6 * cross(x, y, a, b) +
          3 * cross(x, y, c, d) +
          cross(x, y, e, f) +
          3 * cross(a, b, c, d) +
          3 * cross(a, b, e, f) +
          6 * cross(c, d, e, f)) /
        20;
      [x, y] = [e, f];
    } else {
      area += cross(x, y, startX, startY) / 2;
      [x, y] = [startX, startY];
    }
  }
  return area + cross(x, y, startX, startY) / 2;
}

function cross(ax: number, ay: number, bx: number, by: number): number {
  return ax * by - ay * bx;
}
