'use client';
import { Button, ButtonLink } from '@/app/_ui/Button';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import type { ClassMap } from '@/shared/class/map';
import { shadeOf, mapWords, valueAt, type MapColumn } from '@/shared/class/map-view';
import { signed } from '@/shared/text/number';
import styles from './map.module.css';

type Props = {
  map: ClassMap;
  columns: readonly MapColumn[];
  student: number;
  column: number;
  onSort: (column: number) => void;
};

/**
 * The line of the chosen cell: as this student set it, with the nearest reference in thin outlines and the pair marked.
 */
export function UnderCell({ map, columns, student, column, onSort }: Props) {
  const here = columns[column]!;
  const line = map.lines[here.line]!,
    row = line.rows[student] ?? null;
  const { name, token } = map.students[student]!;
  const value = valueAt(map, student, here);
  const shade = value === null || value.far === null ? 0 : shadeOf(value.far, value.tolerance);
  const nearest = row === null || row.nearest === null ? null : line.references[row.nearest]!;
  return (
    <section className={styles.under} aria-label="The line under the cell">
      <p className={styles.underWords}>
        <strong>{name}</strong>, {here.letters} in “{line.text}”:{' '}
        {mapWords(value, row?.against === null ? 'line' : 'reference')}.
        {row && (
          <>
            {' '}
            Offset {signed(row.offsets[here.pair]!)}, tracking {signed(row.tracking)}.
          </>
        )}
        {nearest && (
          <>
            {' '}
            Thin outlines: the reference of {nearest.author}, tracking {signed(nearest.spacing.tracking)}.
          </>
        )}
      </p>
      <SheetFrame ground={line.ground}>
        {row ? (
          <LineDrawing
            pack={line.pack}
            spacing={{ tracking: row.tracking, offsets: row.offsets }}
            under={nearest?.spacing}
            marks={
              shade === 0
                ? []
                : [{ gap: here.pair, fault: shade < 0 ? 'tight' : 'wide', strength: Math.abs(shade) as 1 | 2 | 3 }]
            }
            ties={[{ from: here.pair, to: here.pair, sign: here.letters }]}
            label={`${line.text} as set by ${name}`}
          />
        ) : (
          <p className={styles.notSet}>{name} has not set this line.</p>
        )}
      </SheetFrame>
      <p className="actions">
        {token && row && (
          <ButtonLink small href={`/critique/${token}/${line.specimenId}`} prefetch={false}>
            Open at the desk
          </ButtonLink>
        )}
        <Button small onClick={() => onSort(column)}>
          Sort the rows by {here.letters}
        </Button>
      </p>
    </section>
  );
}
