import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '@/app/_ui/Button';
import { Checkbox, Field, TextArea } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader } from '@/app/_ui/Page';
import { getCourse } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { createExerciseAction } from '@/app/courses/actions';
import { leadsCourse } from '@/shared/schemas/course';

export const metadata: Metadata = { title: 'Plan an exercise' };

/** Title and brief of an exercise; everything else is planned on the page that follows. */
export default async function NewExercise({ params }: { params: Promise<{ courseId: string }> }) {
  const { courseId } = await params;
  const course = await forPage(getCourse, { courseId });
  if (!leadsCourse(course.role)) notFound();
  return (
    <Page>
      <PageHeader
        title="Plan an exercise"
        trail={[
          { href: '/courses', label: 'Courses' },
          { href: `/courses/${courseId}`, label: course.title },
        ]}
        lead="It begins as a draft that only instructors and assistants see. Lines, dates and criteria come next."
      />
      <Form action={createExerciseAction} label="Plan an exercise">
        <input type="hidden" name="courseId" value={courseId} />
        <Field
          name="title"
          label="Title"
          maxLength={120}
          hint="What students read in the list, for example “A name over a gate”."
        />
        <TextArea
          name="brief"
          label="Brief"
          optional
          rows={8}
          hint="What the lines are for and what is asked. An empty line begins a paragraph. It can change later."
        />
        <Checkbox
          name="safetySigns"
          label="Lines like these appear on traffic, exit, safety or accessibility signs"
          hint="Then the exercise says that such signs follow codes and standards and not the eye."
        />
        <div className="actions">
          <SubmitButton pending="Beginning…">Create the draft</SubmitButton>
          <ButtonLink kind="text" href={`/courses/${courseId}`}>
            Back without one
          </ButtonLink>
        </div>
      </Form>
    </Page>
  );
}
