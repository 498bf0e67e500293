'use client';
import type { RefObject } from 'react';
import { Button } from '@/app/_ui/Button';
import type { AcrossLine } from '@/shared/critique/desk';
import { tallyOf, type RemarkRun } from '@/shared/critique/remark-run';
import { fillStockNote } from '@/shared/critique/stock-note';
import type { Fault, StockNoteView } from '@/shared/schemas/note';
import { counted } from '@/shared/text/number';
import style from './desk.module.css';

type Props = {
  run: RemarkRun;
  change: (run: RemarkRun) => void;
  anew: () => void;
  stock: readonly StockNoteView[];
  letters: readonly string[];
  fault: Exclude<Fault, ''>;
  lines: readonly AcrossLine[];
  begin: () => void;
  area: RefObject<HTMLTextAreaElement | null>;
};

/** One remark for those who share a fault: typed, or from the stock. Nothing is sent from here; each line is looked at first. */
export function AcrossRemark({ run, change, anew, stock, letters, fault, lines, begin, area }: Props) {
  const tokens = lines.map(({ token }) => token);
  const { left, passed } = tallyOf(run, tokens);
  const open = tokens.length - left - passed;
  const known = lines.every(({ suggestion }) => suggestion !== null);
  return (
    <section className={style.remark} aria-labelledby="remark-title">
      <h2 id="remark-title">One remark for them</h2>
      <form
        className={style.noteForm}
        onSubmit={(event) => {
          event.preventDefault();
          begin();
        }}
      >
        <label htmlFor="remark-text">The remark on {letters.join('').trim()}</label>
        <textarea
          id="remark-text"
          ref={area}
          rows={2}
          maxLength={2000}
          className="input"
          value={run.body}
          aria-describedby="remark-hint"
          onChange={(event) => change({ ...run, body: event.target.value })}
          onKeyDown={(event) => {
            if (event.key === 'Escape') event.currentTarget.blur();
            if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
              event.preventDefault();
              event.currentTarget.blur();
              begin();
            }
          }}
        />
        <p className="hint" id="remark-hint">
          Nothing is sent from here. Each line is shown first; you accept it, skip it or change the wording. Ctrl+Enter
          begins.
        </p>
        {known && (
          <label className={style.inline}>
            <input
              type="checkbox"
              checked={run.suggests}
              onChange={(event) => change({ ...run, suggests: event.target.checked })}
            />{' '}
            with a suggestion for each line, where the measure would set it; it can be nudged at the look
          </label>
        )}
        <div className="actions">
          <Button type="submit" kind="main" small disabled={run.body.trim() === '' || open === 0}>
            {left + passed > 0 ? `Go on: ${open} to look at` : `Look at each of ${counted(open, 'line')}`}
          </Button>
          {left + passed > 0 && (
            <>
              <span className="quiet">
                {left} left, {passed} passed over on this page
              </span>
              <Button small kind="text" onClick={anew}>
                Start another remark
              </Button>
            </>
          )}
        </div>
      </form>
      <ol className={style.stockRow} aria-label="Stock notes">
        {stock.map((note, index) => {
          const filled = fillStockNote(note.body, letters, note.fault || fault);
          return (
            <li key={note.id}>
              <button type="button" className={style.stockNote} onClick={() => change({ ...run, body: filled })}>
                <kbd aria-hidden="true">{index < 9 ? index + 1 : ''}</kbd>
                <span>
                  {filled}
                  {note.fault === fault && <strong> · fits what was measured</strong>}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
    </section>
  );
}
