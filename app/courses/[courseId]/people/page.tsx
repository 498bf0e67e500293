import type { Metadata } from 'next';
import Link from 'next/link';
import { listJoinLinks } from '@/lib/course/join';
import { listPeople } from '@/lib/course/people';
import { forPage } from '@/lib/http/page';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Page, PageHeader, Section } from '@/app/_ui/Page';
import { FindField, Pages } from '@/app/_ui/Pages';
import { When } from '@/app/_ui/Status';
import { leadsCourse } from '@/shared/schemas/course';
import { counted } from '@/shared/text/number';
import { CourseFrame } from '../../course-frame';
import { JoinLinks } from './join-links';
import { PeopleTable } from './people-table';

export const metadata: Metadata = { title: 'People' };

type Props = { params: Promise<{ courseId: string }>; searchParams: Promise<{ page?: string; find?: string }> };

export default async function People({ params, searchParams }: Props) {
  const { courseId } = await params;
  const asked = await searchParams;
  const people = await forPage(listPeople, { courseId, page: asked.page ?? 1, find: asked.find ?? '' });
  const { course, sections, staff, studentCount, removed, removedCount } = people;
  const manages = leadsCourse(course.role);
  const links = manages ? await forPage(listJoinLinks, { courseId }) : [];
  const hrefOf = (id: string) => (manages ? `/courses/${courseId}/people/${id}` : null);
  return (
    <>
      <CourseFrame course={course} current="people" />
      <Page width="wide">
        <PageHeader
          title="People"
          lead={`${counted(studentCount, 'student')}, ${counted(staff.length, 'person', 'people')} teaching${sections.length > 0 ? `, ${counted(sections.length, 'section')}` : ''}`}
          actions={
            manages ? <ButtonLink href={`/courses/${courseId}/people/import`}>Import a roster</ButtonLink> : undefined
          }
        />
        {manages && (
          <JoinLinks
            courseId={courseId}
            timeZone={course.timeZone}
            sections={sections}
            links={links}
            open={studentCount === 0}
          />
        )}
        <Section title="Teaching" id="teaching">
          <PeopleTable caption="People who teach the course" people={staff} hrefOf={hrefOf} withRole />
        </Section>
        <Section title="Students" id="students">
          {studentCount === 0 ? (
            <EmptyState title="No students yet">
              {manages
                ? 'Make a join link above and give it to the class: on paper, by mail, or on the projector.'
                : 'The instructor invites them by a link.'}
            </EmptyState>
          ) : (
            <Students people={people} here={`/courses/${courseId}/people`} hrefOf={hrefOf} />
          )}
        </Section>
        {manages && removed.length > 0 && (
          <Section
            title="Removed"
            id="removed"
            lead={`They can’t open the course; their work is kept. You can restore them on their page.${removedCount > removed.length ? ` Of ${removedCount}, the last ${removed.length} are listed.` : ''}`}
          >
            <ul>
              {removed.map((person) => (
                <li key={person.id}>
                  <Link href={`/courses/${courseId}/people/${person.id}`}>{person.name}</Link>
                  {person.removedAt && (
                    <span className="quiet">
                      , <When at={person.removedAt} timeZone={course.timeZone} />
                    </span>
                  )}
                </li>
              ))}
            </ul>
          </Section>
        )}
      </Page>
    </>
  );
}

type Shown = Awaited<ReturnType<typeof listPeople>>;
type StudentsProps = { people: Shown; here: string; hrefOf: (id: string) => string | null };

/** A page of the students by name, with a field to find one where there is more than a page of them. */
function Students({
  people: { students, studentCount, found, find, page, pages, sections },
  here,
  hrefOf,
}: StudentsProps) {
  const address = (to: number) =>
    `${here}?${new URLSearchParams({ ...(find && { find }), page: String(to) })}#students`;
  return (
    <>
      {(find !== '' || studentCount > students.length) && (
        <FindField
          label="Find a student"
          find={find}
          action={here}
          hint="Part of a name, or the beginning of an e-mail address with its @."
        />
      )}
      {find !== '' && (
        <p role="status">
          {found === 0 ? (
            <>No names match “{find}”.</>
          ) : (
            <>
              {counted(found, 'student')} of {studentCount}.
            </>
          )}{' '}
          <Link href={here}>All students</Link>
        </p>
      )}
      {students.length > 0 && (
        <PeopleTable
          caption={`Students of the course${pages > 1 ? `, page ${page} of ${pages}` : ''}`}
          people={students}
          hrefOf={hrefOf}
          termOf={(id) => `${here}/${id}/term`}
          withSection={sections.length > 0}
        />
      )}
      <Pages label="Pages of students" page={page} pages={pages} href={address} />
    </>
  );
}
