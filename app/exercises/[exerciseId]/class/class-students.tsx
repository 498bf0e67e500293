import { Pages } from '@/app/_ui/Pages';
import { Section } from '@/app/_ui/Page';
import { Status, When } from '@/app/_ui/Status';
import { Table } from '@/app/_ui/Table';
import type { ShownClass } from '@/lib/class/class';
import { counted, withUnit } from '@/shared/text/number';

/** Which students have sent what, with marks where they may be shown; a page at a time. */
export function ClassStudents({ shown, here }: { shown: ShownClass; here: string }) {
  const { students, criteria, round, course, page, pages, summary, studentCount } = shown;
  const address = (to: number) => `${here}?round=${round.number}&page=${to}`;
  return (
    <Section
      title="Who has sent what"
      lead={`${summary.proofs} of ${counted(studentCount, 'student')} sent a proof that counts in round ${round.number}.`}
    >
      <Table caption={`Students of round ${round.number}${pages > 1 ? `, page ${page} of ${pages}` : ''}`}>
        <thead>
          <tr>
            <th scope="col">Student</th>
            <th scope="col">Section</th>
            <th scope="col">Sent</th>
            <th scope="col">Counts</th>
            {criteria.map(({ versionId, title }) => (
              <th key={versionId} scope="col">
                {title}
              </th>
            ))}
            <th scope="col" className="number">
              Total
            </th>
            <th scope="col">Released</th>
          </tr>
        </thead>
        <tbody>
          {students.map((student) => (
            <tr key={student.memberId}>
              <th scope="row">{student.name}</th>
              <td>{student.section ?? '–'}</td>
              <td>
                {student.sent === 0 ? (
                  <Status kind="waiting">nothing yet</Status>
                ) : (
                  <Status kind={student.late ? 'late' : 'done'}>
                    {student.hidden ? 'sent' : counted(student.sent, 'proof')}
                    {student.late && ', late'}
                  </Status>
                )}
              </td>
              <td>
                {student.counts ? (
                  <>
                    number {student.counts.number}
                    {student.counts.why === 'chosen' && ' (picked)'},{' '}
                    <When at={student.counts.receivedAt} timeZone={course.timeZone} short />
                  </>
                ) : (
                  '–'
                )}
              </td>
              {criteria.map(({ versionId, levels }) => {
                const level =
                  student.levels.find(({ criterionVersionId }) => criterionVersionId === versionId)?.level ?? null;
                return <td key={versionId}>{level === null ? '–' : levels[level]}</td>;
              })}
              <td className="number">{student.percent === null ? '–' : withUnit(student.percent, '%', 1)}</td>
              <td>{student.released === null ? 'no' : `number ${student.released}`}</td>
            </tr>
          ))}
        </tbody>
      </Table>
      <Pages label="Pages of students" page={page} pages={pages} href={address} />
    </Section>
  );
}
