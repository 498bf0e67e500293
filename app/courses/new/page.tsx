import type { Metadata } from 'next';
import { getNewCourseOptions } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader } from '@/app/_ui/Page';
import { TimeZoneField } from '../time-zone-field';
import { createCourseAction } from '../actions';

export const metadata: Metadata = { title: 'Open a course' };

export default async function NewCourse() {
  const { timeZones, suggested } = await forPage(getNewCourseOptions);
  return (
    <Page>
      <PageHeader
        title="Open a course"
        trail={[{ href: '/courses', label: 'Your courses' }]}
        lead="You’ll be its instructor. Next, invite people and plan an exercise."
      />
      <Form action={createCourseAction} label="Open a course">
        <Field
          name="title"
          label="Title"
          hint="For example subject and term: Lettering, autumn 2026."
          autoComplete="off"
        />
        <TimeZoneField timeZones={timeZones} chosen={suggested} />
        <div className="actions">
          <SubmitButton>Open the course</SubmitButton>
        </div>
      </Form>
    </Page>
  );
}
