'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import type { AcrossFault, AcrossLine, AcrossVersion } from '@/shared/critique/desk';
import { type RemarkRun, tallyOf } from '@/shared/critique/remark-run';
import { spacedLetters } from '@/shared/critique/run';
import { fillStockNote } from '@/shared/critique/stock-note';
import { suggestedSpacing } from '@/shared/critique/suggested-spacing';
import type { Fault, StockNoteView } from '@/shared/schemas/note';
import { counted } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import style from './desk.module.css';
import type { Acts } from './keys';
import { type UsedLooks, LooksMenu, useKeysAndLooks } from './looks';
import { Suggestion, usePlace } from './place';
import { Sheet } from './sheet';

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

/**
 * One remark for students who share a fault: typed, or from the stock. Nothing is sent from here; the marker looks at
 * each line first.
 */
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

type OneRemarkProps = {
  line: AcrossLine;
  version: AcrossVersion;
  at: AcrossFault;
  body: string;
  suggestion: number[] | null;
  place: number;
  of: number;
  keys: boolean;
  looks: UsedLooks;
  confirm: (body: string, suggestion: number[] | null) => void;
  passOver: () => void;
  takeBack: () => void;
  stop: () => void;
};

/**
 * One of the lines that share the fault, large, with the remark beside it: send it, skip this line, or change the words
 * for it.
 */
export function OneRemark({
  line,
  version,
  at,
  body,
  suggestion,
  place: number,
  of,
  keys,
  looks,
  confirm,
  passOver,
  takeBack,
  stop,
}: OneRemarkProps) {
  const { pack } = version;
  const run = { first: at.first, last: at.last };
  const place = usePlace(line.spacing, run, suggestion);
  const [own, setOwn] = useState<string | null>(null);
  const top = useRef<HTMLHeadingElement>(null);
  const message = line.notes.filter(({ fromPair, toPair }) => fromPair === at.first && toPair === at.last);
  useEffect(() => top.current?.focus(), []);

  const acts: Acts = {
    y: () => confirm(body, place.suggestion),
    n: passOver,
    e: () => setOwn(body),
    z: takeBack,
    b: stop,
    Escape: stop,
    o: () => place.nudge(5),
    t: () => place.nudge(-5),
    O: () => place.nudge(1),
    T: () => place.nudge(-1),
    x: () => place.suggest(null),
  };
  useKeysAndLooks(acts, looks, keys);

  return (
    <section className={style.oneRemark} aria-labelledby="one-title">
      <h2 id="one-title" ref={top} tabIndex={-1}>
        {at.letters}, set by {line.shownAs}{' '}
        <span className="quiet">
          ({number} of {of})
        </span>
      </h2>
      <Sheet
        line={version}
        pack={pack}
        spacing={place.suggestion ? suggestedSpacing(line.spacing, run, place.suggestion) : line.spacing}
        under={place.suggestion ? line.spacing : null}
        underLabel={place.suggestion ? 'the line as it was sent' : null}
        marks={[]}
        ties={[]}
        run={run}
        looks={looks.looks}
      />
      <LooksMenu looks={looks} />
      <Suggestion
        letters={spacedLetters(pack)}
        run={run}
        suggestion={place.suggestion}
        sent={line.spacing.offsets}
        place={place}
      />
      {message.length > 0 && (
        <p className="quiet">
          Said here already:{' '}
          {message.map((note, index) => (
            <span key={index}>{quoted(note.body)} </span>
          ))}
        </p>
      )}
      {own === null ? (
        <>
          <blockquote className={style.preview}>{body}</blockquote>
          <div className="actions">
            <Button kind="main" small onClick={() => confirm(body, place.suggestion)} aria-keyshortcuts="y">
              Yes, leave it (y)
            </Button>
            <Button small onClick={passOver} aria-keyshortcuts="n">
              Not this one (n)
            </Button>
            <Button small onClick={() => setOwn(body)} aria-keyshortcuts="e">
              Other words for this one (e)
            </Button>
            <Button small kind="text" onClick={stop} aria-keyshortcuts="b">
              Back to all (b)
            </Button>
          </div>
        </>
      ) : (
        <form
          className={style.noteForm}
          onSubmit={(event) => {
            event.preventDefault();
            if (own.trim() !== '') confirm(own.trim(), place.suggestion);
          }}
        >
          <label htmlFor="own-words">The remark for {line.shownAs} alone</label>
          <textarea
            id="own-words"
            rows={3}
            maxLength={2000}
            className="input"
            value={own}
            autoFocus
            onChange={(event) => setOwn(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) event.currentTarget.form?.requestSubmit();
              if (event.key === 'Escape') setOwn(null);
            }}
          />
          <div className="actions">
            <Button type="submit" kind="main" small>
              Leave it
            </Button>
            <Button small kind="text" onClick={() => setOwn(null)}>
              Leave the words as they were
            </Button>
          </div>
        </form>
      )}
    </section>
  );
}
