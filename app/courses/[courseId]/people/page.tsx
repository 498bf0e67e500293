import type { Metadata } from 'next';
import Link from 'next/link';
import { listJoinLinks } from '@/lib/course/list-join-links';
import { listPeople } from '@/lib/course/list-people';
import { forPage } from '@/lib/http/page';
import { EmptyState } from '@/app/_ui/EmptyState';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { Section } from '@/app/_ui/Section';
import { When } from '@/app/_ui/When';
import { counted } from '@/shared/text/number';
import { CourseFrame } from '../../course-frame';
import { JoinLinks } from './join-links';
import { PeopleTable } from './people-table';

export const metadata: Metadata = { title: 'People' };

type Props = { params: Promise<{ courseId: string }> };

export default async function People({ params }: Props) {
  const { courseId } = await params;
  const { course, sections, people, removed } = await forPage(listPeople, { courseId });
  const manages = course.role === 'instructor';
  const links = manages ? await forPage(listJoinLinks, { courseId }) : [];
  const students = people.filter(({ role }) => role === 'student');
  const staff = people.filter(({ role }) => role !== 'student');
  const hrefOf = (id: string) => (manages ? `/courses/${courseId}/people/${id}` : null);
  return (
    <>
      <CourseFrame course={course} current="people" />
      <Page width="wide">
        <PageHeader title="People" lead={`${counted(students.length, 'student')}, ${counted(staff.length, 'person', 'people')} teaching${sections.length > 0 ? `, ${counted(sections.length, 'section')}` : ''}`} />
        {manages && <JoinLinks courseId={courseId} timeZone={course.timeZone} sections={sections} links={links} open={students.length === 0} />}
        <Section title="Teaching" id="teaching">
          <PeopleTable caption="People who teach the course" people={staff} hrefOf={hrefOf} withRole />
        </Section>
        <Section title="Students" id="students">
          {students.length === 0
            ? <EmptyState title="No students yet">{manages ? 'Make a join link above and give it to the class: on paper, by mail, or on the projector.' : 'The instructor invites them by a link.'}</EmptyState>
            : <PeopleTable caption="Students of the course" people={students} hrefOf={hrefOf} withSection={sections.length > 0} />}
        </Section>
        {manages && removed.length > 0 && (
          <Section title="Removed" id="removed" lead="They can’t open the course; their work is kept. On their page they can be put back.">
            <ul>
              {removed.map((person) => (
                <li key={person.id}>
                  <Link href={`/courses/${courseId}/people/${person.id}`}>{person.name}</Link>
                  {person.removedAt && <span className="quiet">, <When at={person.removedAt} timeZone={course.timeZone} /></span>}
                </li>
              ))}
            </ul>
          </Section>
        )}
      </Page>
    </>
  );
}
