'use client';
import { useEffect, useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import type { AcrossFault, AcrossLine, AcrossVersion } from '@/shared/critique/desk';
import { suggestedSpacing } from '@/shared/critique/suggested-spacing';
import { spacedLetters } from '@/shared/critique/run';
import type { Acts } from './keys';
import { Sheet } from './sheet';
import { LooksMenu, useKeysAndLooks, type LooksInHand } from './looks';
import { usePlace } from './use-place';
import { Suggestion } from './where';
import style from './desk.module.css';

type Props = {
  line: AcrossLine;
  version: AcrossVersion;
  at: AcrossFault;
  body: string;
  suggestion: number[] | null;
  place: number;
  of: number;
  keys: boolean;
  looks: LooksInHand;
  confirm: (body: string, suggestion: number[] | null) => void;
  passOver: () => void;
  takeBack: () => void;
  stop: () => void;
};

/** One of those who share the fault, large, with the remark beside it: yes, not this one, or other words for it. */
export function AcrossLook({
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
}: Props) {
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
    <section className={style.look} aria-labelledby="look-title">
      <h2 id="look-title" ref={top} tabIndex={-1}>
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
            <span key={index}>“{note.body}” </span>
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
