import { operation } from '@/lib/access/operation';
import { roundContext } from '@/lib/review/context';
import { queueOf } from '@/lib/review/queue';
import { type StudentRow, studentsPage } from '@/lib/class/class';
import type { MarkSource } from '@/shared/marking/marks';
import { roundByNumber } from '@/shared/schemas/critique';
import { csvOf } from './file';

/**
 * The marks of a round as CSV for people. While names are hidden, students go by their alias, without a time.
 */
export const exportMarks = operation({
  name: 'export-marks',
  allow: 'marks:export',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, course, hidden } = context;
    const queue = hidden ? await queueOf(data, context, now) : [];
    const alias = new Map(queue.map(({ memberId, shownAs }) => [memberId, shownAs]));
    const { rows, criteria } = await studentsPage(data, context, { skip: 0, take: 100_000 }, { evenHidden: true });
    const head = [
      'Student',
      'Section',
      'Round',
      'Proof',
      'Received (UTC)',
      'Days late',
      'Deduction in %',
      ...criteria.flatMap(({ title }) => [title, `${title}, points in %`]),
      'Total in %',
      'Two markers',
      'Released as number',
    ];
    const lines = rows.map((row) => lineOf(row, criteria, round.number, alias));
    if (hidden) lines.sort((one, other) => (String(one[0]) < String(other[0]) ? -1 : 1));
    await data.audit.record({ courseId: course.id, verb: 'marks exported', subject: `round:${round.id}` }, now);
    return { csv: csvOf(head, lines), name: `marks-round-${round.number}.csv` };
  },
});

type Criteria = Awaited<ReturnType<typeof studentsPage>>['criteria'];

function lineOf(
  row: StudentRow,
  criteria: Criteria,
  round: number,
  alias: ReadonlyMap<string, string>,
): (string | number | null)[] {
  const { counts, late } = row;
  const marks = criteria.flatMap(({ versionId, levels }) => {
    const given = row.levels.find(({ criterionVersionId }) => criterionVersionId === versionId)?.level ?? null;
    return given === null ? ['', ''] : [levels[given]?.title ?? '', levels[given]?.points ?? ''];
  });
  return [
    row.hidden ? (alias.get(row.memberId) ?? 'no proof that counts') : row.name,
    row.hidden ? '' : (row.section ?? ''),
    round,
    counts?.number ?? '',
    counts && !row.hidden ? counts.receivedAt.toISOString() : '',
    late?.startedDays ?? '',
    late?.deduct ?? '',
    ...marks,
    row.percent === null ? '' : Math.round(row.percent * 100) / 100,
    twoMarkers(row.levels),
    row.released ?? '',
  ];
}

/** What two markers made of this proof, the most open state of its criteria; empty where one marks it. */
function twoMarkers(levels: StudentRow['levels']): string {
  const from = (source: MarkSource) => levels.some((level) => level.from === source);
  if (from('second-waits')) return 'second not finished, first counts';
  if (from('differs')) return 'differ, first counts';
  return from('settled') ? 'settled' : from('agreed') ? 'agreed' : '';
}
