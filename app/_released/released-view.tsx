import type { ReactNode } from 'react';
import { Section } from '@/app/_ui/Section';
import type { DrawnLine } from '@/lib/release/draw-lines';
import type { LineSince } from '@/lib/release/changes-since';
import type { NoteEntryView } from '@/shared/schemas/note';
import type { ReleaseSnapshot } from '@/shared/schemas/release';
import { ReleasedLineView, type UnderNote } from './released-line';
import { ReleasedMarks } from './released-marks';

type Props = {
  snapshot: ReleaseSnapshot;
  drawn: readonly DrawnLine[];
  answers?: Record<string, NoteEntryView[]>;
  since?: readonly LineSince[];
  timeZone: string;
  /** Under each note, e.g. a form to answer it. */
  underNote?: UnderNote;
  /** Beside each line, e.g. the way back to the bench. */
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
