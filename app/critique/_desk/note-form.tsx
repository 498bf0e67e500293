'use client';

import { type RefObject, useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { fillStockNote } from '@/shared/critique/stock-note';
import type { Fault, StockNoteView } from '@/shared/schemas/note';
import style from './desk.module.css';
import { send } from '@/app/_ui/send';

type Props = {
  /** Letters at the chosen place, for the heading and for stock notes. */
  letters: string;
  text: string;
  keep: (text: string) => void;
  save: () => void;
  area: RefObject<HTMLTextAreaElement | null>;
};

/** Writes a note in the marker's own words. The text is stored on this device until it is saved. */
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
  /** The letters at the chosen place, one by one. */
  letters: readonly string[];
  /** What the measure found there, once the marker has asked for the deviations. */
  fault: Fault;
  leave: (note: StockNoteView) => void;
  drop: (note: StockNoteView) => void;
  keepAsStock: (shared: boolean, fault: Fault) => void;
  mayKeep: boolean;
};

/** Remarks kept for reuse. One press leaves one at the chosen place, with the letters filled in. */
export function StockNotes({ stock, letters, fault, leave, drop, keepAsStock, mayKeep }: StockProps) {
  const share = useRef<HTMLInputElement>(null);
  const answers = useRef<HTMLSelectElement>(null);
  return (
    <section className={style.stock} aria-labelledby="stock-title">
      <h3 id="stock-title">Stock notes</h3>
      <ol>
        {stock.map((note, index) => (
          <li key={note.id}>
            <button
              type="button"
              className={style.stockNote}
              aria-keyshortcuts={index < 9 ? String(index + 1) : undefined}
              onClick={() => leave(note)}
            >
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

/** What a stock note can answer, so that it is suggested where the measure finds exactly that. */
const stockFaults: readonly (readonly [Fault, string])[] = [
  ['', 'any place'],
  ['wide', 'too wide'],
  ['tight', 'too tight'],
  ['left', 'a letter too far left'],
  ['right', 'a letter too far right'],
  ['touching', 'letters that touch'],
];

/** The stock notes: kept from typed notes, and retired by their authors. */
export function useStock(courseId: string, initial: StockNoteView[], say: (words: string) => void) {
  const [stock, setStock] = useState(initial);
  return {
    stock,
    async keep(body: string, shared: boolean, fault: Fault) {
      const answer = await send<StockNoteView>('POST', '/api/critique/stock-notes', { courseId, body, fault, shared });
      if (answer.ok) setStock((all) => [answer.result, ...all]);
      say(answer.ok ? 'Kept as a stock note.' : answer.message);
    },
    async drop({ id }: StockNoteView) {
      const answer = await send('DELETE', `/api/critique/stock-notes/${id}`, {});
      if (answer.ok) setStock((all) => all.filter((note) => note.id !== id));
      say(answer.ok ? 'The stock note is out of use; notes left with it stay.' : answer.message);
    },
  };
}

/** Stock notes that answer the fault first; otherwise in the order they were added. */
export const suggestedFirst = (stock: readonly StockNoteView[], fault: Fault): StockNoteView[] =>
  fault === ''
    ? [...stock]
    : stock.toSorted((one, other) => Number(other.fault === fault) - Number(one.fault === fault));
