import type { Metadata } from 'next';
import Link from 'next/link';
import { listCourses } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { listNextSteps } from '@/lib/work/next-steps';
import { ButtonLink } from '../_ui/Button';
import { EmptyState, Page, PageHeader, Section } from '../_ui/Page';
import { StaffSteps, StudentSteps } from './next-steps';
import { roleWords } from './role-words';

export const metadata: Metadata = { title: 'To do now' };

/** Where everyone arrives after signing in: what is to be done now, then the courses. */
export default async function Courses() {
  const { courses, mayMakeCourses } = await forPage(listCourses);
  const { student, staff } = await forPage(listNextSteps);
  const open = (
    <ButtonLink kind={courses.length === 0 ? 'main' : 'usual'} href="/courses/new">
      Open a course
    </ButtonLink>
  );
  if (courses.length === 0)
    return (
      <Page>
        <PageHeader title="Your courses" />
        {mayMakeCourses ? (
          <EmptyState title="No course yet" action={open}>
            Open one; then you invite people by a link and post the first exercise.
          </EmptyState>
        ) : (
          <EmptyState title="You are in no course yet">
            A course opens with the link that its instructor gives you. If you were in one and it is gone, you may have
            been removed from it: ask its instructor.
          </EmptyState>
        )}
      </Page>
    );
  return (
    <Page width="wide">
      <PageHeader
        title={student.length + staff.length > 0 ? 'To do now' : 'Your courses'}
        lead={student.length + staff.length > 0 ? undefined : 'Nothing is waiting for you.'}
      />
      <StudentSteps steps={student} />
      <StaffSteps steps={staff} />
      <Section title="Courses" actions={mayMakeCourses ? open : undefined}>
        <ul className="card-list">
          {courses.map((course) => (
            <li key={course.id}>
              <h3>
                <Link href={`/courses/${course.id}`}>{course.title}</Link>
              </h3>
              <p className="quiet">
                {roleWords(course.role)}
                {course.section && `, section ${course.section}`}
                {course.archived && ' · archived'}
              </p>
            </li>
          ))}
        </ul>
      </Section>
    </Page>
  );
}
