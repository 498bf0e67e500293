'use client';

import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { When } from '@/app/_ui/Status';
import type { Answer } from '@/app/_ui/send';
import type { DeskLine } from '@/shared/critique/desk';
import { lettersOf, currentBody, currentThread } from '@/shared/critique/run';
import type { NoteView } from '@/shared/schemas/note';
import { signed } from '@/shared/text/number';
import style from './desk.module.css';
import { type Notes, Unsaved } from './notes';
import { inMarginOrder } from './sheet';

type Props = {
  desk: DeskLine;
  letters: readonly string[];
  notes: Notes;
  shown: string | null;
  show: (id: string) => void;
};

/** The margin: notes beside the gaps they are about, and those that are not on the server yet. */
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

type Change = (path: string, method: 'POST' | 'PUT', body: unknown) => Promise<Answer<NoteView>>;
type NoteCardProps = {
  note: NoteView;
  sign: number;
  letters: string;
  timeZone: string;
  released: boolean;
  change: Change;
  /** Shows the note's suggestion in the line, or hides it again. */
  show: () => void;
  shown: boolean;
};

/** One note in the margin: its sign on the drawing, its text, its thread, and what can be done with it. */
function NoteCard({ note, sign, letters, timeZone, released, change, show, shown }: NoteCardProps) {
  const [open, setOpen] = useState<'edit' | 'answer' | null>(null);
  const [trouble, setTrouble] = useState('');
  const [first, ...answers] = currentThread(note.entries);

  async function act(path: string, method: 'POST' | 'PUT', body: unknown) {
    const answer = await change(path, method, body);
    setTrouble(answer.ok ? '' : answer.message);
    if (answer.ok) setOpen(null);
  }

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const body = String(new FormData(event.currentTarget).get('body'));
    const last = Math.max(...note.entries.map(({ seq }) => seq));
    if (open === 'edit') void act(note.id, 'PUT', { version: note.version, body, suggestion: note.suggestion });
    else void act(`${note.id}/answers`, 'POST', { afterSeq: last, body });
  }

  return (
    <article className={style.note} data-settled={note.settled || undefined} aria-label={`Note ${sign} on ${letters}`}>
      <p className={style.noteHead}>
        <span className={style.sign}>{sign}</span> <strong>{letters}</strong>
        {note.settled && <span className="quiet"> settled</span>}
      </p>
      <p>
        {first?.entry.body}
        {first?.edited && <span className="quiet"> (edited)</span>}
      </p>
      {note.suggestion && (
        <p className={style.noteSuggestion}>
          Suggests <span className="figure-text">{note.suggestion.map((offset) => signed(offset)).join(', ')}</span>{' '}
          <Button small kind="text" aria-pressed={shown} onClick={show}>
            {shown ? 'Remove it from the line' : 'Show it in place'}
          </Button>
        </p>
      )}
      <p className={style.by}>
        {first?.entry.author ?? 'A marker'}, <When at={first?.entry.at ?? ''} timeZone={timeZone} short />
      </p>
      {answers.map(({ entry, edited }) => (
        <p key={entry.seq} className={style.answer}>
          {entry.body}
          {edited && <span className="quiet"> (edited)</span>}{' '}
          <span className={style.by}>{entry.author ?? (entry.by === 'student' ? 'The student' : 'A marker')}</span>
        </p>
      ))}
      {open && (
        <form className={style.noteForm} onSubmit={submit}>
          <label htmlFor={`thread-${note.id}`}>
            {open === 'edit'
              ? 'The note, in other words'
              : released
                ? 'Answer (the student reads it at once)'
                : 'Answer (sent with the note)'}
          </label>
          <textarea
            id={`thread-${note.id}`}
            name="body"
            className="input"
            rows={3}
            maxLength={2000}
            defaultValue={open === 'edit' ? currentBody(note.entries) : ''}
            autoFocus
            required
          />
          <div className="actions">
            <Button type="submit" small>
              Save
            </Button>
            <Button small kind="text" onClick={() => setOpen(null)}>
              Leave it
            </Button>
          </div>
        </form>
      )}
      {trouble && (
        <p className="field-error" role="alert">
          {trouble}
        </p>
      )}
      {!open && (
        <div className={style.noteActs}>
          <Button small kind="text" onClick={() => setOpen('edit')}>
            Edit
          </Button>
          <Button small kind="text" onClick={() => setOpen('answer')}>
            Answer
          </Button>
          <Button
            small
            kind="text"
            onClick={() =>
              act(`${note.id}/state`, 'PUT', { version: note.version, to: note.settled ? 'open' : 'settled' })
            }
          >
            {note.settled ? 'Open again' : 'Settle'}
          </Button>
          <Button
            small
            kind="text"
            onClick={() => act(`${note.id}/state`, 'PUT', { version: note.version, to: 'removed' })}
          >
            Remove
          </Button>
        </div>
      )}
    </article>
  );
}
