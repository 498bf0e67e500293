import { Section } from '@/app/_ui/Section';
import { Table } from '@/app/_ui/Table';
import type { ReleaseSnapshot } from '@/shared/schemas/release';
import { withUnit } from '@/shared/text/number';

/** The marks of a release with what each level means, and how the total comes about. */
export function ReleasedMarks({ marks, total }: Pick<ReleaseSnapshot, 'marks' | 'total'>) {
  return (
    <Section title="Marks">
      <Table
        caption={
          total.after === null ? (
            'Not every criterion has been marked, so there is no total.'
          ) : (
            <>Total {withUnit(total.after, '%', 1)}</>
          )
        }
      >
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col">Level</th>
            <th scope="col">What it means</th>
            <th scope="col" className="number">
              Points
            </th>
            <th scope="col" className="number">
              Weight
            </th>
          </tr>
        </thead>
        <tbody>
          {marks.map(({ criterionVersionId, title, weight, level, levels }) => {
            const given = level === null ? null : levels[level];
            return (
              <tr key={criterionVersionId}>
                <th scope="row">{title}</th>
                <td>{given ? `${given.title} (${level! + 1} of ${levels.length})` : 'not marked'}</td>
                <td>{given?.description}</td>
                <td className="number">{given ? withUnit(given.points, '%') : '–'}</td>
                <td className="number">{weight}</td>
              </tr>
            );
          })}
        </tbody>
      </Table>
      <details className="more">
        <summary>How the total comes about</summary>
        <ul>
          {total.arithmetic.map((step) => (
            <li key={step}>{step}</li>
          ))}
          {total.late && <li>{total.late}</li>}
        </ul>
      </details>
      {total.late && <p>{total.late}</p>}
    </Section>
  );
}
