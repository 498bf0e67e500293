import type { ReactNode } from 'react';
import { roomsAtOneScale, sizesWithin } from '@/app/_line/relative-size';
import { Section } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import type { DrawnLine, LineSince } from '@/lib/release/released';
import type { NoteEntryView } from '@/shared/schemas/note';
import type { ReleaseSnapshot } from '@/shared/schemas/release';
import { withUnit } from '@/shared/text/number';
import { NotedLine, UnnotedLine, type UnderNote } from './released-line';
import style from './released.module.css';

type Props = {
  snapshot: ReleaseSnapshot;
  drawn: readonly DrawnLine[];
  answers?: Record<string, NoteEntryView[]>;
  since?: readonly LineSince[];
  /** Shown under each note, e.g. a form for a reply. */
  underNote?: UnderNote;
  /** Shown beside each line, e.g. the link back to the bench. */
  besideLine?: (drawing: DrawnLine, text: string) => ReactNode;
};

/**
 * What was released from a proof, as its student sees it: the lines with their notes in the margin, those without a note
 * in a row, and the marks.
 */
export function ReleasedView({ snapshot, drawn, answers = {}, since = [], underNote, besideLine }: Props) {
  const lines = snapshot.lines.flatMap((line, index) => {
    const drawing = drawn.find(({ specimenVersionId }) => specimenVersionId === line.specimenVersionId);
    return drawing ? [{ line, drawing, place: index + 1 }] : [];
  });
  const rooms = roomsAtOneScale(drawn);
  const noted = lines.filter(({ line }) => line.notes.length > 0);
  const unnoted = lines.filter(({ line }) => line.notes.length === 0);
  const { share, sizes } = sizesWithin(
    unnoted.map(({ drawing }) => drawing),
    ROW_WIDTH,
  );
  return (
    <>
      {noted.length > 0 && (
        <Section
          title="Notes, line by line"
          lead={noted.length > 1 ? 'Each line as large beside the others as it will be in use.' : undefined}
        >
          {noted.map(({ line, drawing, place }) => (
            <NotedLine
              key={line.specimenVersionId}
              line={line}
              drawing={drawing}
              place={place}
              room={rooms[drawn.indexOf(drawing)]!}
              answers={answers}
              underNote={underNote}
              changes={since.find(({ specimenVersionId }) => specimenVersionId === line.specimenVersionId)?.notes ?? {}}
              beside={besideLine?.(drawing, line.text)}
            />
          ))}
        </Section>
      )}
      {unnoted.length > 0 && (
        <Section
          title={noted.length > 0 ? 'Lines without a note' : 'No line has a note'}
          lead={
            share === 1
              ? 'At their true size.'
              : `At ${withUnit(100 * share, '%')} of their true size, as large beside one another as in use.`
          }
        >
          <div className={style.row}>
            {unnoted.map(({ line, drawing, place }, index) => (
              <UnnotedLine
                key={line.specimenVersionId}
                line={line}
                drawing={drawing}
                place={place}
                size={sizes[index]!}
                beside={besideLine?.(drawing, line.text)}
              />
            ))}
          </div>
        </Section>
      )}
      {snapshot.marks.length > 0 && <ReleasedMarks marks={snapshot.marks} total={snapshot.total} />}
    </>
  );
}

/** The widest line without a note, so that a phone shows it whole. CSS px. */
const ROW_WIDTH = 300;

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
