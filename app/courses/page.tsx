import type { Metadata } from 'next';
import Link from 'next/link';
import { listCourses } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { ButtonLink } from '../_ui/Button';
import { EmptyState, Page, PageHeader } from '../_ui/Page';
import { roleWords } from './role-words';

export const metadata: Metadata = { title: 'Courses' };

export default async function Courses() {
  const { courses, mayMakeCourses } = await forPage(listCourses);
  const open = (
    <ButtonLink kind={courses.length === 0 ? 'main' : 'usual'} href="/courses/new">
      Open a course
    </ButtonLink>
  );
  return (
    <Page>
      <PageHeader title="Your courses" actions={mayMakeCourses && courses.length > 0 ? open : undefined} />
      {courses.length === 0 &&
        (mayMakeCourses ? (
          <EmptyState title="No course yet" action={open}>
            Open one; then you invite people by a link and post the first exercise.
          </EmptyState>
        ) : (
          <EmptyState title="You are in no course yet">
            A course opens with the link that its instructor gives you. If you were in one and it is gone, you may have
            been removed from it: ask its instructor.
          </EmptyState>
        ))}
      {courses.length > 0 && (
        <ul className="card-list">
          {courses.map((course) => (
            <li key={course.id}>
              <h2>
                <Link href={`/courses/${course.id}`}>{course.title}</Link>
              </h2>
              <p className="quiet">
                {roleWords(course.role)}
                {course.section && `, section ${course.section}`}
                {course.archived && ' · archived'}
              </p>
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}
