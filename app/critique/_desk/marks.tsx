'use client';

import { type KeyboardEvent, type Ref, useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { When } from '@/app/_ui/Status';
import { send } from '@/app/_ui/send';
import type { DeskCriterion, DeskLine } from '@/shared/critique/desk';
import { afterLateRule } from '@/shared/marking/marks';
import { totalOf } from '@/shared/marking/total';
import type { MarkView } from '@/shared/schemas/mark';
import { withUnit } from '@/shared/text/number';
import { quoted } from '@/shared/text/quoted';
import style from './desk.module.css';

type Props = {
  proof: string;
  timeZone: string;
  marks: DeskLine['marks'];
  task: DeskLine['task'];
  two: DeskLine['two'];
  heldBy: string | null;
  /** Where the key for marks moves the focus. */
  first: Ref<HTMLButtonElement>;
  /** Goes on to the next proof of the queue. */
  next: () => void;
};

/** The marks of the whole proof, a level a criterion, with the total and its arithmetic. */
export function Marks({ proof, timeZone, marks, task, two, heldBy, first, next }: Props) {
  const [given, setGiven] = useState<Record<string, MarkView>>(() =>
    Object.fromEntries(marks.criteria.map(({ versionId, mark }) => [versionId, mark])),
  );
  const [state, setState] = useState(task.state);
  const [trouble, setTrouble] = useState('');
  if (marks.criteria.length === 0)
    return (
      <p>
        This exercise has no criteria yet, so there is nothing to mark. The instructor adds them on the exercise’s plan.
      </p>
    );
  if (two.sight === 'none')
    return (
      <p>
        Two people mark this proof, and this marking belongs to the other marker: its marks are shown once both have
        finished.
      </p>
    );
  const criteria = marks.criteria.map((criterion) => ({ ...criterion, mark: given[criterion.versionId]! }));
  const nextOpen = criteria.find(({ mark }) => mark.level === null)?.versionId ?? criteria[0]!.versionId;

  async function give(criterion: DeskCriterion, level: number | null, why: string): Promise<string | null> {
    const { version } = given[criterion.versionId]!;
    const answer = await send<MarkView>('PUT', '/api/critique/marks', {
      proofId: proof,
      criterionVersionId: criterion.versionId,
      level,
      version,
      why,
    });
    if (!answer.ok) return answer.message;
    setGiven((all) => ({ ...all, [criterion.versionId]: answer.result }));
    return null;
  }

  async function finish(to: 'done' | 'open') {
    const answer = await send<{ state: 'done' | 'open' }>('PUT', '/api/critique/state', { proof, to });
    setTrouble(answer.ok ? '' : answer.message);
    if (answer.ok) setState(answer.result.state);
    return answer.ok;
  }

  return (
    <div className="stack">
      {heldBy && <p className={style.held}>{heldBy} has this proof; the marks are theirs until they give it back.</p>}
      {criteria.map((criterion) => (
        <Criterion
          key={criterion.versionId}
          criterion={criterion}
          give={give}
          first={criterion.versionId === nextOpen ? first : undefined}
        />
      ))}
      <Total criteria={criteria} late={marks.total} />
      {trouble && (
        <p className="field-error" role="alert">
          {trouble}
        </p>
      )}
      <div className="actions">
        {state === 'done' ? (
          <>
            <p>Marked. It is sent when the instructor releases the round.</p>
            {two.state !== 'done' && (
              <Button small onClick={() => finish('open')}>
                Open it again
              </Button>
            )}
          </>
        ) : (
          <>
            <Button small kind="main" onClick={() => void finish('done').then((done) => done && next())}>
              Finish and next
            </Button>
            <Button small kind="text" onClick={() => void finish('done')}>
              Finish marking
            </Button>
          </>
        )}
      </div>
      {marks.history.length > 0 && (
        <Disclosure summary="How the marks came about">
          <ul className={style.findings}>
            {marks.history.map((event, index) => {
              const criterion = marks.criteria.find(({ versionId }) => versionId === event.criterionVersionId);
              const levelTitle = (level: number | null) =>
                level === null ? 'not marked' : (criterion?.levels[level]?.title ?? `level ${level + 1}`);
              return (
                <li key={index}>
                  <When at={event.at} timeZone={timeZone} short />, {event.who ?? 'a former member'}:{' '}
                  {criterion?.title ?? 'an earlier criterion'}, {levelTitle(event.before)} → {levelTitle(event.after)}
                  {event.why && <>, because {quoted(event.why)}</>}
                </li>
              );
            })}
          </ul>
        </Disclosure>
      )}
    </div>
  );
}

/** The total of the levels shown on the page now; the server computes it again with the same code. */
function Total({ criteria, late }: { criteria: DeskCriterion[]; late: DeskLine['marks']['total'] }) {
  const { percent, arithmetic } = totalOf(criteria.map(({ mark, ...rest }) => ({ ...rest, level: mark.level })));
  const after = afterLateRule(percent, late.rule);
  return (
    <div className={style.total}>
      <p>
        <strong>{after.percent === null ? 'No total yet' : `Total ${withUnit(after.percent, '%', 1)}`}</strong>
      </p>
      <ul className={style.findings}>
        {arithmetic.map((step) => (
          <li key={step}>{step}</li>
        ))}
        {after.sentence && <li>{after.sentence}</li>}
      </ul>
    </div>
  );
}

type CriterionProps = {
  criterion: DeskCriterion;
  /** Gives the level; returns what went wrong, or null. */
  give: (criterion: DeskCriterion, level: number | null, why: string) => Promise<string | null>;
  first?: Ref<HTMLButtonElement>;
};

/**
 * One criterion: its levels as buttons, so that arrows never change a mark. With the focus inside, a digit gives the
 * level and goes on to the next criterion. A proposed level is labelled so, with its arithmetic, and is never applied
 * by itself.
 */
function Criterion({ criterion, give, first }: CriterionProps) {
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
    // Here a digit is a level and never a stock note, even if there is no such level.
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
        <strong title={description || undefined}>{title}</strong> <span className="quiet">weight {weight}</span>
      </p>
      {description && <p className={style.criterionWords}>{description}</p>}
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
            {level.title} <span className="quiet">{withUnit(level.points, '%')}</span>
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
