'use client';
import { useState, type Ref } from 'react';
import { Button } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { When } from '@/app/_ui/Status';
import type { DeskCriterion, DeskLine } from '@/shared/critique/desk';
import { afterLateRule } from '@/shared/marking/marks';
import { totalOf } from '@/shared/marking/total';
import type { MarkView } from '@/shared/schemas/mark';
import { withUnit } from '@/shared/text/number';
import { Criterion } from './criterion';
import { send } from './send';
import style from './desk.module.css';

type Props = {
  proof: string;
  timeZone: string;
  marks: DeskLine['marks'];
  task: DeskLine['task'];
  two: DeskLine['two'];
  heldBy: string | null;
  /** Where the key for marks leads. */
  first: Ref<HTMLButtonElement>;
};

/** The marks of the whole proof, a level a criterion, with the total and its arithmetic. */
export function Marks({ proof, timeZone, marks, task, two, heldBy, first }: Props) {
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
          <Button small kind="main" onClick={() => finish('done')}>
            Finish marking
          </Button>
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
                  {event.why && <>, because “{event.why}”</>}
                </li>
              );
            })}
          </ul>
        </Disclosure>
      )}
    </div>
  );
}

/** The total of what stands on the page now; the server reckons it again with the same code. */
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
        {after.said && <li>{after.said}</li>}
      </ul>
    </div>
  );
}
