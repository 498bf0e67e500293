import type { ReactNode } from 'react';
import { Section } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import type { DrawnLine, LineSince } from '@/lib/release/released';
import type { NoteEntryView } from '@/shared/schemas/note';
import type { ReleaseSnapshot } from '@/shared/schemas/release';
import { withUnit } from '@/shared/text/number';
import { ReleasedLineView, type UnderNote } from './released-line';

type Props = {
  snapshot: ReleaseSnapshot;
  drawn: readonly DrawnLine[];
  answers?: Record<string, NoteEntryView[]>;
  since?: readonly LineSince[];
  timeZone: string;
  /** Shown under each note, e.g. a form for a reply. */
  underNote?: UnderNote;
  /** Shown beside each line, e.g. the link back to the bench. */
  besideLine?: (specimenId: string, text: string) => ReactNode;
};

/** What was released from a proof, as its student sees it: marks, then each line with its notes tied to their pairs. */
export function ReleasedView({ snapshot, drawn, answers = {}, since = [], timeZone, underNote, besideLine }: Props) {
  return (
    <>
      {snapshot.marks.length > 0 && <ReleasedMarks marks={snapshot.marks} total={snapshot.total} />}
      <Section title="Line by line">
        {snapshot.lines.map((line) => {
          const drawing = drawn.find(({ specimenVersionId }) => specimenVersionId === line.specimenVersionId);
          if (!drawing) return null;
          return (
            <ReleasedLineView
              key={line.specimenVersionId}
              line={line}
              drawing={drawing}
              answers={answers}
              timeZone={timeZone}
              underNote={underNote}
              changes={since.find(({ specimenVersionId }) => specimenVersionId === line.specimenVersionId)?.notes ?? {}}
              beside={besideLine?.(drawing.specimenId, line.text)}
            />
          );
        })}
      </Section>
    </>
  );
}

/** The marks of a release with what each level means, and how the total is computed. */
function ReleasedMarks({ marks, total }: Pick<ReleaseSnapshot, 'marks' | 'total'>) {
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
