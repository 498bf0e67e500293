import { operation } from '@/lib/access/operation';
import { readMap } from '@/lib/class/read-map';
import { columnsOf, valueAt } from '@/shared/class/map-view';
import { mapInput } from '@/shared/schemas/class';
import { csvOf } from './csv';

/** The map of a class, a row a student and pair; students are named as the map names them now. */
export const exportMap = operation({
  name: 'export-map',
  allow: 'class:see',
  input: mapInput,
  run: async ({ caller, now }, input) => {
    const map = await readMap(caller, input, { now });
    const columns = columnsOf(map.lines);
    const head = [
      'Student',
      'Line',
      'Pair number',
      'Pair',
      'Tracking',
      'Offset',
      'Deviation (1/1000 em)',
      'Tolerance',
      'Held against',
    ];
    const rows = map.students.flatMap(({ name }, student) =>
      columns.flatMap((column) => {
        const line = map.lines[column.line]!,
          row = line.rows[student],
          value = valueAt(map, student, column);
        return row && value
          ? [
              [
                name,
                line.text,
                column.pair + 1,
                column.letters,
                row.tracking,
                row.offsets[column.pair]!,
                value.far,
                value.tolerance,
                row.against === null ? 'own middle' : 'nearest reference',
              ],
            ]
          : [];
      }),
    );
    return { csv: csvOf(head, rows), name: `map-round-${input.roundNumber}.csv` };
  },
});
