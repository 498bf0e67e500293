import type { ClassMap } from './map';
import { valueAt, type MapColumn } from './map-view';

/** How the rows of a map stand: as they came (by name), by how far off they are, by likeness, or by one pair. */
export type MapOrder = { by: 'name' } | { by: 'farthest' } | { by: 'nearest' } | { by: 'alike' } | { by: 'pair'; column: number };

/** The students' places in the map in the order asked for. Equal ones keep the order in which they came. */
export function orderedRows(map: ClassMap, columns: readonly MapColumn[], order: MapOrder): number[] {
  const rows = map.students.map((_, student) => student);
  if (order.by === 'name') return rows;
  if (order.by === 'alike') return byLikeness(map, columns);
  const keys = rows.map((student) => (order.by === 'pair' ? farAt(map, student, columns[order.column]) : meanOf(map, columns, student)));
  const sign = order.by === 'nearest' ? 1 : -1;
  // Who has nothing to compare stands last in every order.
  return rows.sort((one, other) => {
    const [a, b] = [keys[one]!, keys[other]!];
    if (a === null || b === null) return a === b ? one - other : a === null ? 1 : -1;
    return sign * (a - b) || one - other;
  });
}

const farAt = (map: ClassMap, student: number, column: MapColumn | undefined): number | null => (column ? (valueAt(map, student, column)?.far ?? null) : null);

/** Mean distance from the reference over all pairs that are compared, whichever way; null without any. */
export function meanOf(map: ClassMap, columns: readonly MapColumn[], student: number): number | null {
  const sizes = columns.flatMap((column) => {
    const far = farAt(map, student, column);
    return far === null ? [] : [Math.abs(far)];
  });
  return sizes.length === 0 ? null : sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
}

/**
 * Begins with whoever is farthest off and goes on, each time, to the one most like the last: least mean difference over
 * the pairs both have. So equal faults stand below one another. Quadratic in the students: 300 × 150 is 7 million steps.
 */
function byLikeness(map: ClassMap, columns: readonly MapColumn[]): number[] {
  const width = columns.length;
  const values = new Float64Array(map.students.length * width).fill(Number.NaN);
  map.students.forEach((_, student) => columns.forEach((column, index) => {
    const far = farAt(map, student, column);
    if (far !== null) values[student * width + index] = far;
  }));
  const left = orderedRows(map, columns, { by: 'farthest' });
  const placed: number[] = [];
  while (left.length > 0) {
    const last = placed.at(-1);
    const next = last === undefined ? 0 : likest(values, width, last, left);
    placed.push(...left.splice(next, 1));
  }
  return placed;
}

function likest(values: Float64Array, width: number, to: number, among: readonly number[]): number {
  let best = 0, least = Infinity;
  among.forEach((student, index) => {
    let sum = 0, count = 0;
    for (let column = 0; column < width; column += 1) {
      const difference = values[student * width + column]! - values[to * width + column]!;
      if (difference === difference) { sum += Math.abs(difference); count += 1; }
    }
    const mean = count === 0 ? Number.MAX_VALUE : sum / count;
    if (mean < least) { least = mean; best = index; }
  });
  return best;
}
