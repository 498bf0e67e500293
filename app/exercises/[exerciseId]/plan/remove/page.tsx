import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { getPlan } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { removeExerciseAction } from '../actions';
import { PlanPage } from '../plan-page';

export const metadata: Metadata = { title: 'Remove the draft' };

export default async function Remove({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise } = await forPage(getPlan, await params);
  if (exercise.state !== 'draft' || exercise.removedAt) redirect(`/exercises/${exercise.id}/plan`);
  return (
    <PlanPage exercise={exercise} title={`Remove “${exercise.title}”?`}>
      <p>
        Only instructors and assistants have seen this draft. It is removed from the course’s list with its lines,
        rounds, criteria and references; you can restore it from the next page.
      </p>
      <Form action={removeExerciseAction} label="Remove the draft">
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <input type="hidden" name="version" value={exercise.version} />
        <div className="actions">
          <SubmitButton kind="grave">Remove the draft</SubmitButton>
          <ButtonLink href={`/exercises/${exercise.id}/plan`}>Keep it</ButtonLink>
        </div>
      </Form>
    </PlanPage>
  );
}
