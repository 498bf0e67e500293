import { EmptyState } from '@/app/_ui/EmptyState';
import { Form } from '@/app/_ui/Form';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { When } from '@/app/_ui/When';
import { restoreExerciseAction } from './actions';

type Props = {
  exercise: { id: string; title: string; version: number; removedAt: Date | null };
  course: { id: string; title: string; timeZone: string };
};

/** A draft that was removed: when, and the way back. */
export function Aside({ exercise, course }: Props) {
  const back = (
    <Form action={restoreExerciseAction} label="Take it back">
      <input type="hidden" name="exerciseId" value={exercise.id} />
      <input type="hidden" name="version" value={exercise.version} />
      <SubmitButton>Take it back</SubmitButton>
    </Form>
  );
  return (
    <Page>
      <PageHeader title={exercise.title} trail={[{ href: `/courses/${course.id}`, label: course.title }]} />
      <EmptyState title="This draft was removed" action={back}>
        It went from the list <When at={exercise.removedAt!} timeZone={course.timeZone} />. Everything in it is still
        here, and it can be taken back.
      </EmptyState>
    </Page>
  );
}
