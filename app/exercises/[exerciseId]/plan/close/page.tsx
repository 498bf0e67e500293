import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { getPlan } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';
import { closeExerciseAction } from '../actions';
import { PlanPage } from '../plan-page';

export const metadata: Metadata = { title: 'Close the exercise' };

export default async function Close({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise, proofs } = await forPage(getPlan, await params);
  if (exercise.state !== 'published') redirect(`/exercises/${exercise.id}`);
  return (
    <PlanPage exercise={exercise} title="Close the exercise?">
      <ul>
        <li>Students can still read it and what was released, but can’t send any more proofs.</li>
        <li>
          {proofs === 0 ? 'No proof has been sent.' : `${counted(proofs, 'proof')} and all notes and marks stay.`}
        </li>
        <li>It can be opened again at any time.</li>
      </ul>
      <Form action={closeExerciseAction} label="Close the exercise">
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <input type="hidden" name="version" value={exercise.version} />
        <div className="actions">
          <SubmitButton kind="grave">Close it</SubmitButton>
          <ButtonLink href={`/exercises/${exercise.id}`}>Leave it open</ButtonLink>
        </div>
      </Form>
    </PlanPage>
  );
}
