import type { MapNumbers } from './map-view';

/** The order of the rows of a map: as given (by name), by how far off they are, by similarity, or by one pair. */
export type MapOrder =
  { by: 'name' } | { by: 'farthest' } | { by: 'nearest' } | { by: 'alike' } | { by: 'pair'; column: number };

/** The students' places in the map in the given order. Equal ones keep their order. */
export function orderedRows(numbers: MapNumbers, order: MapOrder): number[] {
  const rows = Array.from({ length: numbers.students }, (_, student) => student);
  if (order.by === 'name') return rows;
  if (order.by === 'alike') return byLikeness(numbers);
  const width = numbers.columns.length;
  const keys = rows.map((student) =>
    order.by === 'pair' ? (numbers.far[student * width + order.column] ?? Number.NaN) : meanSize(numbers, student),
  );
  const sign = order.by === 'nearest' ? 1 : -1;
  // Students with nothing to compare are last in every order.
  return rows.sort((one, other) => {
    const [a, b] = [keys[one]!, keys[other]!];
    if (Number.isNaN(a) || Number.isNaN(b))
      return Number.isNaN(a) === Number.isNaN(b) ? one - other : Number.isNaN(a) ? 1 : -1;
    return sign * (a - b) || one - other;
  });
}

/** Mean distance over all pairs of a student that are compared, whichever way, in 1/1000 em; NaN without any. */
function meanSize({ columns, far }: MapNumbers, student: number): number {
  let sum = 0,
    count = 0;
  for (let column = 0; column < columns.length; column += 1) {
    const value = far[student * columns.length + column]!;
    if (!Number.isNaN(value)) {
      sum += Math.abs(value);
      count += 1;
    }
  }
  return count === 0 ? Number.NaN : sum / count;
}

/**
 * Begins with the student who is farthest off and goes on, each time, to the one most like the last: least mean
 * difference over the pairs both have. So equal faults end up below one another. Quadratic in the students: 300 × 150
 * is 7 million steps.
 */
function byLikeness(numbers: MapNumbers): number[] {
  const left = orderedRows(numbers, { by: 'farthest' });
  const placed: number[] = [];
  while (left.length > 0) {
    const last = placed.at(-1);
    placed.push(...left.splice(last === undefined ? 0 : likest(numbers, last, left), 1));
  }
  return placed;
}

function likest({ columns: { length: width }, far }: MapNumbers, to: number, among: readonly number[]): number {
  let best = 0,
    least = Infinity;
  among.forEach((student, index) => {
    let sum = 0,
      count = 0;
    for (let column = 0; column < width; column += 1) {
      const difference = far[student * width + column]! - far[to * width + column]!;
      if (!Number.isNaN(difference)) {
        sum += Math.abs(difference);
        count += 1;
      }
    }
    const mean = count === 0 ? Number.MAX_VALUE : sum / count;
    if (mean < least) {
      least = mean;
      best = index;
    }
  });
  return best;
}
