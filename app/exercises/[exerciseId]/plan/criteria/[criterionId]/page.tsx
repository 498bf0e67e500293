import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Section } from '@/app/_ui/Page';
import { getPlan } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { changeCriterionAction, retireCriterionAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { SavedNow } from '../../saved-now';
import { CriterionFields } from '../criterion-fields';

type Props = { params: Promise<{ exerciseId: string; criterionId: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { exerciseId, criterionId } = await params;
  const { criteria } = await forPage(getPlan, { exerciseId });
  return { title: criteria.find(({ id }) => id === criterionId)?.title ?? 'Criterion' };
}

export default async function Criterion({ params }: Props) {
  const { exerciseId, criterionId } = await params;
  const { exercise, criteria } = await forPage(getPlan, { exerciseId });
  const criterion = criteria.find(({ id }) => id === criterionId);
  if (!criterion) notFound();
  return (
    <PlanPage
      exercise={exercise}
      title={criterion.title}
      lead={
        exercise.state === 'draft'
          ? undefined
          : 'A change makes a new version. Marks that were given keep the words and weights they were given by.'
      }
    >
      <Form action={changeCriterionAction} label="Criterion">
        <SavedNow
          saved={[
            { name: 'title', label: 'Name', value: criterion.title },
            { name: 'description', label: 'Description', value: criterion.description },
            { name: 'weight', label: 'Weight', value: String(criterion.weight) },
            ...criterion.levels.flatMap((level, index) => [
              { name: `levels.${index}.title`, label: `Level ${index + 1}`, value: level.title },
              { name: `levels.${index}.points`, label: `Level ${index + 1}, percent`, value: String(level.points) },
            ]),
          ]}
        />
        <input type="hidden" name="criterionId" value={criterion.id} />
        <input type="hidden" name="number" value={criterion.number} />
        <CriterionFields criterion={criterion} />
        <div className="actions">
          <SubmitButton pending="Saving…">Save the criterion</SubmitButton>
        </div>
      </Form>
      <Section title="Retire this criterion" lead="Marks given by it stay, and you can restore it from the plan.">
        <Form action={retireCriterionAction} label="Retire this criterion">
          <input type="hidden" name="criterionId" value={criterion.id} />
          <div className="actions">
            <SubmitButton kind="grave">Retire “{criterion.title}”</SubmitButton>
          </div>
        </Form>
      </Section>
    </PlanPage>
  );
}
