'use client';
import { Button } from '@/app/_ui/Button';
import { Notice } from '@/app/_ui/Notice';
import type { DeskLine } from '@/shared/critique/desk';
import { lettersOf } from '@/shared/critique/run';
import { counted } from '@/shared/text/number';
import { NoteCard } from './note-card';
import { inMarginOrder } from './tied';
import type { Notes } from './use-notes';
import style from './desk.module.css';

type Props = { desk: DeskLine; letters: readonly string[]; notes: Notes; shown: string | null; show: (id: string) => void };

/** The margin: notes beside what they speak of, and those that the server does not have yet. */
export function Margin({ desk, letters, notes, shown, show }: Props) {
  const ordered = inMarginOrder(notes.notes);
  const signIn = `/sign-in?next=${encodeURIComponent(`/critique/${desk.proof.token}/${desk.line.specimenId}`)}`;
  return (
    <div className={style.notes}>
      <h2>Notes</h2>
      {notes.waiting.length > 0 && (
        <Notice kind="warning" live="polite" title={`${counted(notes.waiting.length, 'note')} not saved yet`}>
          <p>{notes.trouble?.said ?? 'On the way.'} {notes.waiting.length === 1 ? 'It is' : 'They are'} kept on this device and sent as soon as it can be.</p>
          {notes.trouble?.signedOut && <p><a href={signIn} target="_blank" rel="noopener">Sign in again in a new window</a>, then come back here.</p>}
          <ul>
            {notes.waiting.map((note) => (
              <li key={note.requestKey}>“{note.body}” <Button small kind="text" onClick={() => notes.discard(note.requestKey)}>Discard</Button></li>
            ))}
          </ul>
          <Button small onClick={() => void notes.sendAll()}>Send now</Button>
        </Notice>
      )}
      {ordered.length === 0 && <p className="quiet">No notes on this line yet. Choose a pair, then write one, or press a digit for a stock note.</p>}
      {ordered.map((note, index) => (
        <NoteCard
          key={note.id} note={note} sign={index + 1} timeZone={desk.course.timeZone} released={desk.released}
          letters={note.fromPair === null || note.toPair === null ? 'the line' : lettersOf(letters, { first: note.fromPair, last: note.toPair })}
          change={async (path, method, body) => {
            const answer = await notes.change(path, method, body);
            if (answer.ok && (body as { to?: string }).to === 'removed') notes.forget(note.id);
            return answer;
          }}
          shown={shown === note.id} show={() => show(note.id)}
        />
      ))}
    </div>
  );
}
