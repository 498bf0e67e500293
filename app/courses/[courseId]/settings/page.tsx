import type { Metadata } from 'next';
import Link from 'next/link';
import { listActs } from '@/lib/course/list-acts';
import { readSettings } from '@/lib/course/read-settings';
import { forPage } from '@/lib/http/page';
import { ButtonLink } from '@/app/_ui/Button';
import { Field } from '@/app/_ui/Field';
import { Form } from '@/app/_ui/Form';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { Section } from '@/app/_ui/Section';
import { SubmitButton } from '@/app/_ui/SubmitButton';
import { CourseFrame } from '../../course-frame';
import { TimeZoneField } from '../../time-zone-field';
import { editCourseAction } from './actions';
import { Acts } from './acts';
import { Sections } from './sections';

export const metadata: Metadata = { title: 'Settings' };

type Props = { params: Promise<{ courseId: string }>; searchParams: Promise<{ before?: string }> };

export default async function Settings({ params, searchParams }: Props) {
  const { courseId } = await params;
  const { before = null } = await searchParams;
  const { course, sections, timeZones } = await forPage(readSettings, { courseId });
  const { acts, older } = await forPage(listActs, { courseId, before });
  return (
    <>
      <CourseFrame course={course} current="settings" />
      <Page>
        <PageHeader title="Settings" />
        <Form action={editCourseAction} label="The course">
          <input type="hidden" name="courseId" value={course.id} />
          <input type="hidden" name="version" value={course.version} />
          <Field name="title" label="Title" defaultValue={course.title} autoComplete="off" />
          <TimeZoneField timeZones={timeZones} chosen={course.timeZone} />
          <Field
            name="retainUntil"
            label="Work is kept until"
            type="date"
            optional
            defaultValue={course.retainUntil ?? ''}
            hint="Student work and marks are education records: follow your school’s policy and the law where you are. Nothing is deleted without notice."
          />
          <div className="actions">
            <SubmitButton>Save</SubmitButton>
          </div>
        </Form>
        <p>
          <Link href={`/courses/${course.id}/keeping`}>How long the work is kept, and what then</Link>
        </p>
        <Sections courseId={course.id} sections={sections} />
        <Section
          title="The next term"
          id="next-term"
          lead="Everything that was planned can be taken on in a new course, without people and their work."
        >
          <div className="actions">
            <ButtonLink href={`/courses/${course.id}/copy`}>Copy the course</ButtonLink>
          </div>
        </Section>
        <Section
          title="What was done"
          id="acts"
          lead="Acts on people, marks and releases. Nobody can change this list."
        >
          <Acts
            acts={acts}
            older={older}
            before={before}
            here={`/courses/${course.id}/settings`}
            timeZone={course.timeZone}
          />
        </Section>
      </Page>
    </>
  );
}
