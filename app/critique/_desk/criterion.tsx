'use client';
import { useRef, useState, type KeyboardEvent, type Ref } from 'react';
import { Button } from '@/app/_ui/Button';
import type { DeskCriterion } from '@/shared/critique/desk';
import { withUnit } from '@/shared/text/number';
import style from './desk.module.css';

type Props = {
  criterion: DeskCriterion;
  /** Gives the level; the answer is what went wrong, or null. */
  give: (criterion: DeskCriterion, level: number | null, why: string) => Promise<string | null>;
  first?: Ref<HTMLButtonElement>;
};

/**
 * One criterion: its levels as buttons, so that arrows never change a mark. With the focus inside, a digit gives the level
 * and goes on to the next criterion. A proposed level is labelled so, with its arithmetic, and is never applied by itself.
 */
export function Criterion({ criterion, give, first }: Props) {
  const { title, description, weight, levels, mark, proposed } = criterion;
  const [asking, setAsking] = useState<{ level: number | null } | null>(null);
  const [trouble, setTrouble] = useState('');
  const group = useRef<HTMLDivElement>(null);

  async function choose(level: number | null, why = '') {
    if (level === mark.level) return;
    if (mark.level !== null && why === '') return setAsking({ level });
    const message = await give(criterion, level, why);
    setTrouble(message ?? '');
    if (message === null) setAsking(null);
  }

  function press(event: KeyboardEvent) {
    if (
      event.target instanceof HTMLInputElement ||
      event.ctrlKey ||
      event.altKey ||
      event.metaKey ||
      !/^[1-9]$/.test(event.key)
    )
      return;
    // Here a digit is a level and never a stock note, even where there is no such level.
    event.preventDefault();
    const level = Number(event.key) - 1;
    if (level >= levels.length) return;
    const unmarked = mark.level === null;
    void choose(level).then(() => {
      if (unmarked) nextGroup(group.current)?.querySelector('button')?.focus();
    });
  }

  return (
    <div
      className={style.criterion}
      role="group"
      aria-label={`${title}, weight ${weight}`}
      ref={group}
      onKeyDown={press}
      data-criterion=""
    >
      <p className={style.criterionTitle}>
        <strong>{title}</strong> <span className="quiet">weight {weight}</span>
      </p>
      {description && <p className="quiet note-size">{description}</p>}
      <div className={style.levels}>
        {levels.map((level, index) => (
          <button
            key={index}
            type="button"
            className={style.level}
            aria-pressed={mark.level === index}
            title={level.description || undefined}
            ref={index === 0 ? first : undefined}
            onClick={() => void choose(index)}
          >
            <kbd aria-hidden="true">{index + 1}</kbd> {level.title}{' '}
            <span className="quiet">{withUnit(level.points, '%')}</span>
          </button>
        ))}
        {mark.level !== null && (
          <Button small kind="text" onClick={() => void choose(null)}>
            Revoke
          </Button>
        )}
      </div>
      {proposed && (
        <p className={style.proposed}>
          <em>Proposed from the measure, not given:</em> {levels[proposed.level]?.title}. {proposed.arithmetic}
        </p>
      )}
      {asking && (
        <form
          className={style.why}
          onSubmit={(event) => {
            event.preventDefault();
            void choose(asking.level, String(new FormData(event.currentTarget).get('why')).trim());
          }}
        >
          <label>
            Why does it change? <input name="why" className="input" maxLength={500} required autoFocus />
          </label>
          <Button type="submit" small>
            Change the mark
          </Button>
          <Button small kind="text" onClick={() => setAsking(null)}>
            Leave it
          </Button>
        </form>
      )}
      {trouble && (
        <p className="field-error" role="alert">
          {trouble}
        </p>
      )}
    </div>
  );
}

function nextGroup(from: HTMLElement | null): HTMLElement | null {
  const next = from?.nextElementSibling;
  return next instanceof HTMLElement && next.matches('[data-criterion]') ? next : null;
}
