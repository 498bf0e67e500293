import { median } from '@/shared/stats/median';
import type { ClassMap, MapLineShown } from './map';

/** A column of the map: one pair of one line. `first`: the line begins here. */
export type MapColumn = { line: number; pair: number; letters: string; first: boolean };

export const columnsOf = (lines: readonly Pick<MapLineShown, 'letters'>[]): MapColumn[] =>
  lines.flatMap(({ letters }, line) =>
    letters.slice(1).map((right, pair) => ({ line, pair, letters: `${letters[pair]}${right}`, first: pair === 0 })),
  );

/**
 * What a cell says: how far (in 1/1000 em, above 0 wider) and the tolerance that holds; `far` null where nothing is
 * compared, the whole null where the line was not set.
 */
export type MapValue = { far: number | null; tolerance: number } | null;

export function valueAt({ lines }: Pick<ClassMap, 'lines'>, student: number, { line, pair }: MapColumn): MapValue {
  const here = lines[line]!,
    row = here.rows[student];
  if (!row) return null;
  const tenths = row.tenths[pair] ?? null;
  return { far: tenths === null ? null : tenths / 10, tolerance: toleranceOf(here, row.against, pair) };
}

const toleranceOf = ({ tolerances, ownTolerance }: MapLineShown, against: number | null, pair: number): number =>
  against === null ? ownTolerance : (tolerances[against]?.[pair] ?? ownTolerance);

/** −3 to 3: 0 within tolerance, 1 up to twice, 2 up to three times, 3 beyond it; above 0 wider. */
export type MapShade = -3 | -2 | -1 | 0 | 1 | 2 | 3;

export function shadeOf(far: number, tolerance: number): MapShade {
  const size = Math.abs(far);
  if (size <= tolerance) return 0;
  const steps = size <= 2 * tolerance ? 1 : size <= 3 * tolerance ? 2 : 3;
  return (far > 0 ? steps : -steps) as MapShade;
}

/** An empty cell in a table of shades. */
export const noShade = 9;

/**
 * All cells by student × column, made once, so that ordering and drawing only read: how far (NaN without a value) and
 * the shade.
 */
export type MapNumbers = { students: number; columns: readonly MapColumn[]; far: Float64Array; shades: Int8Array };

export function mapNumbers(map: ClassMap): MapNumbers {
  const columns = columnsOf(map.lines),
    students = map.students.length,
    width = columns.length;
  const far = new Float64Array(students * width).fill(Number.NaN),
    shades = new Int8Array(students * width).fill(noShade);
  let start = 0;
  for (const line of map.lines) {
    line.rows.forEach((row, student) =>
      row?.tenths.forEach((tenths, pair) => {
        if (tenths === null) return;
        const at = student * width + start + pair;
        far[at] = tenths / 10;
        shades[at] = shadeOf(tenths / 10, toleranceOf(line, row.against, pair));
      }),
    );
    start += line.letters.length - 1;
  }
  return { students, columns, far, shades };
}

/** The class in one row: the median of each column, null where no student is compared. */
export const classRow = ({ students, columns, far }: MapNumbers): (number | null)[] =>
  columns.map((_, column) => {
    const values: number[] = [];
    for (let student = 0; student < students; student += 1) {
      const value = far[student * columns.length + column]!;
      if (!Number.isNaN(value)) values.push(value);
    }
    return values.length === 0 ? null : median(values);
  });

/** A value in words: “12 wider than the reference, outside the tolerance of 8”. */
export function mapWords(value: MapValue, against: 'reference' | 'line'): string {
  if (value === null) return 'not set';
  if (value.far === null) return 'not held against anything';
  const than = against === 'reference' ? 'the reference' : 'the line’s own middle';
  const size = Math.round(Math.abs(value.far));
  const how = size === 0 ? `as ${than} has it` : `${size} ${value.far > 0 ? 'wider' : 'tighter'} than ${than}`;
  return `${how}, ${Math.abs(value.far) <= value.tolerance ? 'within' : 'outside'} the tolerance of ${Math.round(value.tolerance)}`;
}
