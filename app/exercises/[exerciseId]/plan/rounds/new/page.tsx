import type { Metadata } from 'next';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { getPlan } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { addRoundAction } from '@/app/exercises/[exerciseId]/plan/actions';
import { PlanPage } from '@/app/exercises/[exerciseId]/plan/plan-page';
import { RoundFields } from '../round-fields';

export const metadata: Metadata = { title: 'Add a round' };

export default async function NewRound({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise, course, rounds } = await forPage(getPlan, await params);
  return (
    <PlanPage
      exercise={exercise}
      title={`Add round ${rounds.length + 1}`}
      lead="One pass of the exercise: students send proofs, get notes, and begin the next round from their last spacing."
    >
      <Form action={addRoundAction} label="Add a round">
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <RoundFields timeZone={course.timeZone} />
        <div className="actions">
          <SubmitButton pending="Adding…">Add the round</SubmitButton>
        </div>
      </Form>
    </PlanPage>
  );
}
