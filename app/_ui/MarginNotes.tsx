import type { ReactNode } from 'react';

export type MarginNote = {
  /** The sign at the end of its hairline. */
  sign: string;
  /** The letters it speaks of, e.g. 'W A'. */
  place: string;
  body: ReactNode;
  id?: string;
};

/** Remarks beside a sheet, each under the sign that its hairline ends in. Folds under the sheet on a narrow screen. */
export function MarginNotes({ notes, label = 'Notes' }: { notes: MarginNote[]; label?: string }) {
  return (
    <ol className="margin-notes" role="list" aria-label={label}>
      {notes.map((note) => (
        <li key={note.sign} id={note.id}>
          <span className="margin-sign">{note.sign}</span>
          <span className="margin-place">{note.place}</span>
          <div>{note.body}</div>
        </li>
      ))}
    </ol>
  );
}
