import { Fragment } from 'react';
import { Notice } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { listCriteria } from '@/lib/exercise/criteria';
import { forPage } from '@/lib/http/page';
import type { Work } from '@/lib/work/overview';
import { withUnit } from '@/shared/text/number';

/** When the round is due, what happens after that, and its state now. */
export function RoundWords({ work: { current, course, exercise } }: { work: Work }) {
  if (exercise.state === 'closed')
    return (
      <Notice title="This exercise is closed">
        It takes no more proofs. What you made and what was said about it stays here to be read.
      </Notice>
    );
  if (!current) return null;
  return (
    <>
      <p>
        {current.dueAt ? (
          <>
            Due{' '}
            <strong>
              <When at={current.dueAt} timeZone={course.timeZone} />
            </strong>
            .{' '}
          </>
        ) : (
          'There is no due date. '
        )}
        {current.dueAt && <LateWords rule={current.lateRule} timeZone={course.timeZone} />} The last proof that arrives
        before marking starts is the one that counts.
      </p>
      {current.markingStarted && (
        <Notice title="Marking has started">
          You can still send a proof, and it is kept; it counts only if your instructor picks it.
        </Notice>
      )}
      {!current.takesProofs && (
        <Notice kind="warning" title="The last date has passed">
          This round takes no more proofs. Your spacings are kept; speak to your instructor if there was a reason.
        </Notice>
      )}
      {current.lateNow && current.takesProofs && (
        <Notice kind="warning" title="A proof sent now is late">
          {current.lateNow.deductPercent > 0
            ? `It is taken and shown as late by ${days(current.lateNow.days)}; ${withUnit(current.lateNow.deductPercent, '%')} of the mark is deducted.`
            : `It is taken and shown as late by ${days(current.lateNow.days)}. Nothing is deducted.`}
        </Notice>
      )}
    </>
  );
}

const days = (count: number): string => (count === 1 ? 'one started day' : `${count} started days`);

function LateWords({ rule, timeZone }: { rule: NonNullable<Work['current']>['lateRule']; timeZone: string }) {
  if (rule.accept === 'none') return <>After that no proof is taken.</>;
  const cost =
    rule.deductPerDay > 0 ? `, with ${withUnit(rule.deductPerDay, '%')} of the mark deducted for each started day` : '';
  if (rule.accept === 'until' && rule.untilAt)
    return (
      <>
        Later proofs are taken until <When at={rule.untilAt} timeZone={timeZone} />, shown as late{cost}.
      </>
    );
  return <>Later proofs are taken and shown as late{cost}.</>;
}

/** The criteria with their levels, for the students they apply to. Empty where no marks are given. */
export async function CriteriaWords({ exerciseId }: { exerciseId: string }) {
  const criteria = await forPage(listCriteria, { exerciseId });
  if (criteria.length === 0) return null;
  return (
    <details className="more">
      <summary>What is judged</summary>
      <ul className="card-list">
        {criteria.map((criterion) => (
          <li key={criterion.id}>
            <h3>{criterion.title}</h3>
            <p className="quiet note-size">{withUnit(criterion.share, '%')} of the mark</p>
            {criterion.description && <p>{criterion.description}</p>}
            <details className="more">
              <summary>Levels of “{criterion.title}”</summary>
              <dl className="facts">
                {criterion.levels.map((level) => (
                  <Fragment key={level.title}>
                    <dt>{level.title}</dt>
                    <dd>{level.description || withUnit(level.points, '%', 1)}</dd>
                  </Fragment>
                ))}
              </dl>
            </details>
          </li>
        ))}
      </ul>
    </details>
  );
}
