import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Section } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import type { CriterionView } from '@/lib/rows/exercise';
import { withUnit } from '@/shared/text/number';
import { restoreCriterionAction } from './actions';
import { basisChoices, wordFor } from './setting-words';

type Props = { exercise: { id: string }; criteria: CriterionView[]; retired: CriterionView[] };

/** The criteria with their levels and their share of the mark. */
export function CriteriaPart({ exercise, criteria, retired }: Props) {
  const add = <ButtonLink href={`/exercises/${exercise.id}/plan/criteria/new`}>Add a criterion</ButtonLink>;
  const whole = criteria.reduce((sum, { weight }) => sum + weight, 0);
  return (
    <Section id="criteria" title="Criteria" actions={criteria.length > 0 ? add : undefined}>
      {criteria.length === 0 && (
        <EmptyState title="No criteria yet" action={add}>
          With criteria, markers give each proof a level for each of them. Without, they leave notes and no marks.
        </EmptyState>
      )}
      {criteria.length > 0 && (
        <ul className="card-list">
          {criteria.map((criterion) => (
            <li key={criterion.id}>
              <h3>
                <Link href={`/exercises/${exercise.id}/plan/criteria/${criterion.id}`}>{criterion.title}</Link>
              </h3>
              <p className="quiet note-size">
                {withUnit((criterion.weight * 100) / whole, '%')} of the mark · rests on:{' '}
                {wordFor(basisChoices, criterion.basis).toLowerCase()}
              </p>
              {criterion.description && <p>{criterion.description}</p>}
              <p className="note-size">
                {criterion.levels.map(({ title, points }) => `${title} (${withUnit(points, '%', 1)})`).join(' · ')}
              </p>
            </li>
          ))}
        </ul>
      )}
      {retired.length > 0 && (
        <details className="more">
          <summary>Retired ({retired.length})</summary>
          <ul className="card-list">
            {retired.map((criterion) => (
              <li key={criterion.id}>
                <p>{criterion.title}</p>
                <Form action={restoreCriterionAction} label={`Restore “${criterion.title}”`}>
                  <input type="hidden" name="criterionId" value={criterion.id} />
                  <div className="actions">
                    <SubmitButton kind="usual" small>
                      Restore
                    </SubmitButton>
                  </div>
                </Form>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
