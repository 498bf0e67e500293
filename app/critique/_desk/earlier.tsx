'use client';
import type { EarlierNote } from '@/shared/critique/desk';
import { lettersOf } from '@/shared/critique/run';
import { changeWords } from '@/shared/critique/change-words';
import style from './desk.module.css';

/** What was said on this line before, and how each pair has moved since. */
export function Earlier({ earlier, letters }: { earlier: EarlierNote[]; letters: readonly string[] }) {
  if (earlier.length === 0) return <p className="quiet">Nothing was said on this line in an earlier round.</p>;
  return (
    <ul className={style.findings}>
      {earlier.map((note) => (
        <li key={note.id}>
          <p>Round {note.round}{note.fromPair === null || note.toPair === null ? ', the line' : `, ${lettersOf(letters, { first: note.fromPair, last: note.toPair })}`}: “{note.body}”</p>
          {note.changes.map((change) => <p key={change.pair} className="figure-text">{changeWords(change)}</p>)}
        </li>
      ))}
    </ul>
  );
}
