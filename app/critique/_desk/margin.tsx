'use client';
import type { DeskLine } from '@/shared/critique/desk';
import { lettersOf } from '@/shared/critique/run';
import { NoteCard } from './note-card';
import { inMarginOrder } from './tied';
import { Unsaved } from './unsaved';
import type { Notes } from './use-notes';
import style from './desk.module.css';

type Props = {
  desk: DeskLine;
  letters: readonly string[];
  notes: Notes;
  shown: string | null;
  show: (id: string) => void;
};

/** The margin: notes beside what they speak of, and those that the server does not have yet. */
export function Margin({ desk, letters, notes, shown, show }: Props) {
  const ordered = inMarginOrder(notes.notes);
  return (
    <div className={style.notes}>
      <h2>Notes</h2>
      <Unsaved notes={notes} here={`/critique/${desk.proof.token}/${desk.line.specimenId}`} />
      {ordered.length === 0 && (
        <p className="quiet">
          No notes on this line yet. Choose a pair, then write one, or press a digit for a stock note.
        </p>
      )}
      {ordered.map((note, index) => (
        <NoteCard
          key={note.id}
          note={note}
          sign={index + 1}
          timeZone={desk.course.timeZone}
          released={desk.released}
          letters={
            note.fromPair === null || note.toPair === null
              ? 'the line'
              : lettersOf(letters, { first: note.fromPair, last: note.toPair })
          }
          change={async (path, method, body) => {
            const answer = await notes.change(path, method, body);
            if (answer.ok && (body as { to?: string }).to === 'removed') notes.forget(note.id);
            return answer;
          }}
          shown={shown === note.id}
          show={() => show(note.id)}
        />
      ))}
    </div>
  );
}
