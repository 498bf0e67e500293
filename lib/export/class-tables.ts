import { operation } from '@/lib/access/operation';
import { classSummary } from '@/lib/class/class-summary';
import { getMap } from '@/lib/class/map';
import { letOthersIn } from '@/lib/let-others-in';
import { agreementOfRound } from '@/lib/review/agreement';
import { roundContext } from '@/lib/review/context';
import type { ClassMap } from '@/shared/class/map';
import { columnsOf, type MapColumn, valueAt } from '@/shared/class/map-view';
import type { Yardstick } from '@/shared/class/summary';
import { agreementWords } from '@/shared/marking/agreement';
import { mapInput } from '@/shared/schemas/class';
import { roundByNumber } from '@/shared/schemas/critique';
import { csvOf, csvRows } from './file';

/** How far the class is from the nearest reference or the usual range, a row a pair; it names no student. */
export const exportClass = operation({
  name: 'export-class',
  allow: 'class:see',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const { round, course } = await roundContext(data, exerciseId, roundNumber);
    const {
      summary: { lines },
    } = await classSummary(data, round, course.id, now);
    const head = [
      'Line',
      'Pair number',
      'Pair',
      'Left side',
      'Right side',
      'Held against',
      'Compared',
      'Median deviation (1/1000 em)',
      'Lower quartile',
      'Upper quartile',
      'Outside',
    ];
    const rows = lines.flatMap(({ text, yardstick, pairs }) =>
      pairs.map(({ letters, sides, spread, judged, outside }, index) => [
        text,
        index + 1,
        letters,
        sides?.[0] ?? '',
        sides?.[1] ?? '',
        yardstick === null ? '' : yardstickWords[yardstick],
        judged,
        spread?.median ?? '',
        spread?.lower ?? '',
        spread?.upper ?? '',
        outside,
      ]),
    );
    return { csv: csvOf(head, rows), name: `class-round-${round.number}.csv` };
  },
});

/** The map of a class, a row a student and pair; students are named as the map names them now. */
export const exportMap = operation({
  name: 'export-map',
  allow: 'class:see',
  input: mapInput,
  run: async ({ caller, now }, input) => {
    const map = await getMap(caller, input, { now });
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
    const parts = [csvOf(head, [])];
    for (let from = 0; from < map.students.length; from += studentsAtOnce) {
      // A whole class is a row for each of its pairs: hundreds of thousands.
      await letOthersIn();
      const some = map.students.slice(from, from + studentsAtOnce);
      parts.push(
        csvRows(
          some.flatMap(({ name }, place) => columns.flatMap((column) => mapRow(map, name, from + place, column) ?? [])),
        ),
      );
    }
    return { csv: parts, name: `map-round-${input.roundNumber}.csv` };
  },
});

const studentsAtOnce = 25;

/** One pair as one student set it; null where they didn't. */
function mapRow(map: ClassMap, name: string, student: number, column: MapColumn) {
  const line = map.lines[column.line]!,
    row = line.rows[student],
    value = valueAt(map, student, column);
  if (!row || !value) return null;
  return [
    [
      name,
      line.text,
      column.pair + 1,
      column.letters,
      row.tracking,
      row.offsets[column.pair]!,
      value.far,
      value.tolerance,
      row.against === null ? yardstickWords['usual-range'] : yardstickWords.reference,
    ],
  ];
}

/**
 * The agreement of two markers by each criterion as CSV: the figures, then the cross-table, a row for each pair of
 * levels. Without names.
 */
export const exportAgreement = operation({
  name: 'export-agreement',
  allow: 'mark:settle',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { criteria } = await agreementOfRound(data, context, now);
    const head = [
      'Criterion',
      'Row',
      'First marker',
      'Second marker',
      'Proofs',
      'Same level in %',
      'Same or adjacent level in %',
      'Quadratic weighted kappa',
      'Reading',
    ];
    const rows = criteria.flatMap(({ criterion: { title, levels }, agreement }) => [
      [
        title,
        'all',
        '',
        '',
        agreement.n,
        percent(agreement.exact),
        percent(agreement.adjacent),
        agreement.kappa === null ? '' : round(agreement.kappa, 4),
        agreementWords(agreement),
      ],
      ...agreement.table.flatMap((row, first) =>
        row.map((count, second) => [
          title,
          'pair of levels',
          levels[first]!.title,
          levels[second]!.title,
          count,
          '',
          '',
          '',
          '',
        ]),
      ),
    ]);
    return { csv: csvOf(head, rows), name: `agreement-round-${context.round.number}.csv` };
  },
});

const yardstickWords: Record<Yardstick, string> = { reference: 'nearest reference', 'usual-range': 'usual range' };
const round = (value: number, decimals: number): number => Math.round(value * 10 ** decimals) / 10 ** decimals;
const percent = (share: number | null): number | string => (share === null ? '' : round(share * 100, 2));
