import type { Metadata } from 'next';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { getPlan } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { addCriterionAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { CriterionFields } from '../criterion-fields';

export const metadata: Metadata = { title: 'Add a criterion' };

export default async function NewCriterion({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise } = await forPage(getPlan, await params);
  return (
    <PlanPage
      exercise={exercise}
      title="Add a criterion"
      lead="What is judged, and the steps of it. A mark is always given by a person."
    >
      <Form action={addCriterionAction} label="Add a criterion">
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <CriterionFields />
        <div className="actions">
          <SubmitButton pending="Adding…">Add the criterion</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}
