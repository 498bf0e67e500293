'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { lettersOf } from '@/shared/critique/run';
import { offsetsOf } from '@/shared/critique/suggested-spacing';
import { OFFSET_LIMIT } from '@/shared/editing/document';
import type { Run, Spacing } from '@/shared/schemas/spacing';
import { signed } from '@/shared/text/number';
import style from './desk.module.css';

type Props = { letters: readonly string[]; place: NotePlace; sent: readonly number[] };

/** Chooses what a note is about, by keyboard, pointer or screen reader: one pair, a run of them, or the line. */
export function Where({ letters, place, sent }: Props) {
  const { run } = place;
  const pairs = letters.slice(1).map((_, index) => index);
  return (
    <div className={style.where}>
      <fieldset className={style.pairs}>
        <legend>Note on</legend>
        <Chip checked={run === null} label="the line" spoken="the whole line" onChoose={() => place.choose(null)} />
        {pairs.map((index) => (
          <Chip
            key={index}
            checked={run !== null && run.first === index}
            inside={run !== null && index > run.first && index <= run.last}
            label={lettersOf(letters, { first: index, last: index })}
            spoken={`pair ${index + 1}, ${letters[index]} and ${letters[index + 1]}, offset ${signed(sent[index] ?? 0)}`}
            onChoose={() => place.choose({ first: index, last: index })}
          />
        ))}
      </fieldset>
      {run && (
        <label className={style.through}>
          as far as{' '}
          <select
            value={run.last}
            onChange={(event) => place.choose({ first: run.first, last: Number(event.target.value) })}
          >
            {pairs
              .filter((index) => index >= run.first)
              .map((index) => (
                <option key={index} value={index}>
                  {index === run.first ? 'this pair alone' : lettersOf(letters, { first: index, last: index })}
                </option>
              ))}
          </select>
        </label>
      )}
    </div>
  );
}

type ChipProps = { checked: boolean; inside?: boolean; label: string; spoken: string; onChoose: () => void };

function Chip({ checked, inside, label, spoken, onChoose }: ChipProps) {
  return (
    <button
      type="button"
      className={style.chip}
      data-inside={inside || undefined}
      aria-pressed={checked}
      aria-label={spoken}
      onClick={onChoose}
    >
      {label}
    </button>
  );
}

type SuggestionProps = {
  letters: readonly string[];
  run: Run | null;
  suggestion: number[] | null;
  sent: readonly number[];
  place: Pick<NotePlace, 'nudge' | 'suggest'>;
};

/** The suggestion in numbers, with buttons as an alternative to keys. Any gap may be opened as well as closed. */
export function Suggestion({ letters, run, suggestion, sent, place }: SuggestionProps) {
  const first = run?.first ?? 0;
  const words = suggestion
    ?.map(
      (offset, index) =>
        `${lettersOf(letters, { first: first + index, last: first + index })} ${signed(sent[first + index]!)} → ${signed(offset)}`,
    )
    .join(', ');
  return (
    <div className={style.suggestion} role="group" aria-label="Suggested spacing">
      <Button small onClick={() => place.nudge(-5)}>
        Tighten
      </Button>
      <Button small onClick={() => place.nudge(5)}>
        Open
      </Button>
      <output>
        {words ? (
          <>
            Suggested: <span className="figure-text">{words}</span>
          </>
        ) : (
          <span className="quiet">
            No suggestion. Tighten or open to show one in place; the letters to the right move along.
          </span>
        )}
      </output>
      {suggestion && (
        <Button small kind="text" onClick={() => place.suggest(null)}>
          Drop it
        </Button>
      )}
    </div>
  );
}

/** The place of a new note, and the spacing it will suggest there. Null means the whole line. */
type Place = { run: Run | null; suggestion: number[] | null };

/**
 * The chosen pair, run or line; at first the line, so that a note is on a pair only where one was chosen. Choosing
 * another place discards an unsaved suggestion; nudging starts from what was sent.
 */
export function usePlace(spacing: Spacing, first: Run | null = null, suggested: number[] | null = null) {
  const [place, setPlace] = useState<Place>({ run: first, suggestion: suggested });
  const last = spacing.offsets.length - 1;
  const choose = (run: Run | null) => setPlace({ run, suggestion: null });
  return {
    ...place,
    choose,
    /** The pair `by` places along; from the whole line, the first or the last. */
    step(by: 1 | -1) {
      const from = place.run === null ? (by > 0 ? -1 : last + 1) : by > 0 ? place.run.last : place.run.first;
      const pair = Math.min(last, Math.max(0, from + by));
      choose({ first: pair, last: pair });
    },
    /** One pair more or fewer at the end of the run. */
    extend(by: 1 | -1) {
      if (place.run === null) return;
      const end = Math.min(last, Math.max(place.run.first, place.run.last + by));
      choose({ first: place.run.first, last: end });
    },
    /** Opens (above 0) or closes every gap of the run. */
    nudge(by: number) {
      const from = place.suggestion ?? offsetsOf(spacing, place.run);
      setPlace({
        run: place.run,
        suggestion: from.map((offset) => Math.min(OFFSET_LIMIT, Math.max(-OFFSET_LIMIT, offset + by))),
      });
    },
    suggest: (suggestion: number[] | null) => setPlace({ run: place.run, suggestion }),
  };
}

type NotePlace = ReturnType<typeof usePlace>;
