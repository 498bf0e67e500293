import type { Metadata } from 'next';
import Link from 'next/link';
import { getRetention } from '@/lib/course/retention';
import { forPage } from '@/lib/http/page';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader } from '@/app/_ui/Page';
import { counted } from '@/shared/text/number';
import { CourseFrame } from '@/app/courses/course-frame';
import { endRetentionAction } from '@/app/courses/actions';
import { retentionWords } from './retention-words';

export const metadata: Metadata = { title: 'Retention' };

type Props = { params: Promise<{ courseId: string }> };

export default async function Retention({ params }: Props) {
  const { courseId } = await params;
  const { course, retainUntil, daysLeft, students } = await forPage(getRetention, { courseId });
  const settings = <Link href={`/courses/${courseId}/settings`}>settings</Link>;
  return (
    <>
      <CourseFrame course={course} current="settings" />
      <Page>
        <PageHeader
          title="How long the work is kept"
          lead="Student work and marks are education records: your school’s policy and the law where you are decide."
        />
        {retainUntil === null || daysLeft === null ? (
          <p>No day has been set until which the work of this course is kept. Set it in the {settings}.</p>
        ) : (
          <p>
            {retentionWords(retainUntil, daysLeft)} Nothing is deleted automatically.{' '}
            {daysLeft >= 0 ? (
              <>Instructors are reminded 30 and 7 days before. A later day can be set in the {settings}.</>
            ) : (
              <>You can end retention now, or set a later day in the {settings}, if the rule allows it.</>
            )}
          </p>
        )}
        <h2>What ending retention does</h2>
        <ul>
          <li>
            All students of this course, those who were removed among them, leave it as pseudonyms: their names,
            sections and accommodations go from it.
          </li>
          <li>
            What they wrote goes, and what was written about their proofs: reasoning, notes and answers, reasons of
            marks, the words of what was released.
          </li>
          <li>
            Spacings, measurements and marks stay, without a name. Their accounts stay, too, as they may be in other
            courses.
          </li>
          <li>It can’t be undone. Backups from before still hold everything: keep none longer than the rule allows.</li>
        </ul>
        {students === 0 && <p>The course names no student any more.</p>}
        {daysLeft !== null && daysLeft < 0 && students > 0 && (
          <Form action={endRetentionAction} label="End retention">
            <input type="hidden" name="courseId" value={courseId} />
            <Field
              name="title"
              label="Write the title of the course"
              hint={`“${course.title}”, to confirm this for ${counted(students, 'student')}.`}
              autoComplete="off"
            />
            <div className="actions">
              <SubmitButton kind="grave" pending="Ending…">
                End retention
              </SubmitButton>
            </div>
          </Form>
        )}
      </Page>
    </>
  );
}
