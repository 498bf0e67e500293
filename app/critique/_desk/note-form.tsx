'use client';
import { useRef, type RefObject } from 'react';
import { Button } from '@/app/_ui/Button';
import { fillStockNote } from '@/shared/critique/stock-note';
import type { Fault, StockNoteView } from '@/shared/schemas/note';
import style from './desk.module.css';

type Props = {
  /** Letters of the chosen place, for the heading and for stock notes. */
  letters: string;
  text: string;
  keep: (text: string) => void;
  save: () => void;
  area: RefObject<HTMLTextAreaElement | null>;
};

/** Writes a note in one's own words. What is typed is kept on this device until it is saved. */
export function NoteForm({ letters, text, keep, save, area }: Props) {
  return (
    <form
      className={style.noteForm}
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <label htmlFor="note-text">Note on {letters}</label>
      <textarea
        id="note-text"
        ref={area}
        rows={3}
        maxLength={2000}
        value={text}
        className="input"
        aria-describedby="note-hint"
        onChange={(event) => keep(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
            event.preventDefault();
            save();
          }
          if (event.key === 'Escape') event.currentTarget.blur();
        }}
      />
      <p className="hint" id="note-hint">
        Ctrl and Enter save it; Escape leaves the field and keeps the words.
      </p>
      <div className="actions">
        <Button type="submit" kind="main" small disabled={text.trim() === ''}>
          Save the note
        </Button>
      </div>
    </form>
  );
}

type StockProps = {
  stock: readonly StockNoteView[];
  /** The letters of the chosen place, one by one. */
  letters: readonly string[];
  /** What the measure found there, once the deviations have been asked for. */
  fault: Fault;
  leave: (note: StockNoteView) => void;
  drop: (note: StockNoteView) => void;
  keepAsStock: (shared: boolean, fault: Fault) => void;
  mayKeep: boolean;
};

/** Remarks kept for use again. One press leaves one at the chosen place, with the letters filled in. */
export function StockNotes({ stock, letters, fault, leave, drop, keepAsStock, mayKeep }: StockProps) {
  const share = useRef<HTMLInputElement>(null);
  const answers = useRef<HTMLSelectElement>(null);
  return (
    <section className={style.stock} aria-labelledby="stock-title">
      <h3 id="stock-title">Stock notes</h3>
      <ol>
        {stock.map((note, index) => (
          <li key={note.id}>
            <button type="button" className={style.stockNote} onClick={() => leave(note)}>
              <kbd aria-hidden="true">{index < 9 ? index + 1 : ''}</kbd>
              <span>
                {fillStockNote(note.body, letters, note.fault || fault)}
                {note.fault !== '' && note.fault === fault && <strong> · fits what was measured</strong>}
              </span>
            </button>
            {note.own && (
              <Button small kind="text" aria-label={`Drop the stock note “${note.body}”`} onClick={() => drop(note)}>
                Drop{note.shared ? ', for all markers' : ''}
              </Button>
            )}
          </li>
        ))}
      </ol>
      {mayKeep && (
        <p className={style.keepStock}>
          <Button
            small
            kind="text"
            onClick={() => keepAsStock(share.current?.checked ?? false, (answers.current?.value ?? '') as Fault)}
          >
            Keep what is typed as a stock note
          </Button>
          <label>
            for{' '}
            <select ref={answers} defaultValue="">
              {stockFaults.map(([value, words]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </label>{' '}
          <label>
            <input type="checkbox" ref={share} /> for all markers of the course
          </label>
        </p>
      )}
    </section>
  );
}

/** What a stock note may answer, so that it is suggested where the measure finds just that. */
const stockFaults: readonly (readonly [Fault, string])[] = [
  ['', 'any place'],
  ['wide', 'too wide'],
  ['tight', 'too tight'],
  ['left', 'a letter too far left'],
  ['right', 'a letter too far right'],
  ['touching', 'letters that touch'],
];
