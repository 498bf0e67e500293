import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { Checkbox, Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Page, PageHeader, Section } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { CourseFrame } from '@/app/courses/course-frame';
import { TimeZoneField } from '@/app/courses/time-zone-field';
import { listAuditEvents } from '@/lib/course/audit-events';
import { getCourseSettings } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { addSectionAction, editCourseAction, removeSectionAction, renameSectionAction } from '@/app/courses/actions';

export const metadata: Metadata = { title: 'Settings' };

type Props = { params: Promise<{ courseId: string }>; searchParams: Promise<{ before?: string }> };

export default async function Settings({ params, searchParams }: Props) {
  const { courseId } = await params;
  const { before = null } = await searchParams;
  const { course, settings, sections, timeZones } = await forPage(getCourseSettings, { courseId });
  const { acts, older } = await forPage(listAuditEvents, { courseId, before });
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
          <Checkbox
            name="figuresHidden"
            label="Hide measured figures from students"
            defaultChecked={settings.figuresHidden}
            hint="At the bench, in released work, in their term and in what they export, before and after sending. Their own offsets, notes and marks stay visible. A student’s own accommodation overrides this."
          />
          <div className="actions">
            <SubmitButton>Save</SubmitButton>
          </div>
        </Form>
        <p>
          <Link href={`/courses/${course.id}/retention`}>Retention</Link>
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
        <Section title="What was done" id="acts" lead="Acts on people, marks and releases. This list can’t be changed.">
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

type SectionsProps = { courseId: string; sections: readonly { id: string; name: string }[] };

/** Sections of the course: each can be renamed in place, or removed. */
function Sections({ courseId, sections }: SectionsProps) {
  return (
    <Section
      title="Sections"
      id="sections"
      lead="If the course meets in parts. People are put into one on their own page, or by a join link that names it."
    >
      {sections.map(({ id, name }) => (
        <div key={id}>
          <Form action={renameSectionAction} inline label={`Rename ${name}`}>
            <Which courseId={courseId} sectionId={id} />
            <Field name={`section-${id}`} label="Name" defaultValue={name} autoComplete="off" />
            <SubmitButton kind="usual" small>
              Rename
            </SubmitButton>
          </Form>
          <Form action={removeSectionAction} inline label={`Delete section ${name}`}>
            <Which courseId={courseId} sectionId={id} />
            <SubmitButton kind="text" small>
              Delete “{name}”; its people stay in the course
            </SubmitButton>
          </Form>
        </div>
      ))}
      <Form action={addSectionAction} inline label="Add a section">
        <input type="hidden" name="courseId" value={courseId} />
        <Field name="newSection" label="New section" autoComplete="off" />
        <SubmitButton kind="usual">Add</SubmitButton>
      </Form>
    </Section>
  );
}

function Which({ courseId, sectionId }: { courseId: string; sectionId: string }) {
  return (
    <>
      <input type="hidden" name="courseId" value={courseId} />
      <input type="hidden" name="sectionId" value={sectionId} />
    </>
  );
}

type Act = { id: string; verb: string; who: string | null; whom: string | null; at: Date };

type ActsProps = { acts: readonly Act[]; older: string | null; before: string | null; here: string; timeZone: string };

/** A page of the log of acts, newest first; closed at first, open when older ones were requested. */
function Acts({ acts, older, before, here, timeZone }: ActsProps) {
  if (acts.length === 0) return <p>Nothing yet.</p>;
  return (
    <Disclosure
      summary={before === null ? `The newest ${acts.length}` : `${acts.length} older ones`}
      open={before !== null}
    >
      <ol role="list">
        {acts.map((act) => (
          <li key={act.id}>
            <When at={act.at} timeZone={timeZone} />: {act.verb}
            {act.whom && <> ({act.whom})</>}, by {act.who ?? 'the server or an erased account'}
          </li>
        ))}
      </ol>
      {(before !== null || older !== null) && (
        <nav aria-label="Pages of the log" className="actions">
          {before !== null && (
            <Link href={`${here}#acts`} prefetch={false}>
              The newest acts
            </Link>
          )}
          {older !== null && (
            <Link href={`${here}?before=${older}#acts`} prefetch={false} rel="next">
              Older acts
            </Link>
          )}
        </nav>
      )}
    </Disclosure>
  );
}
