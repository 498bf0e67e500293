import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState, Page, PageHeader } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import { SectionDates } from '@/app/_ui/SectionDates';
import { When } from '@/app/_ui/Status';
import { getCourseClass } from '@/lib/class/class';
import { getCourse } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';
import { CourseFrame } from '../../course-frame';

type Props = { params: Promise<{ courseId: string }> };

export const metadata: Metadata = { title: 'Class' };

/** Every round of the course: how many have sent, how many have a release, and the link to the work. */
export default async function CourseClassPage({ params }: Props) {
  const { courseId } = await params;
  const [{ course, students, rounds }, framed] = await Promise.all([
    forPage(getCourseClass, { courseId }),
    forPage(getCourse, { courseId }),
  ]);
  return (
    <>
      <CourseFrame course={framed} current="class" />
      <Page width="wide">
        <PageHeader title="The class" lead={`${counted(students, 'student')} in the course.`} />
        {rounds.length === 0 ? (
          <EmptyState title="No rounds yet">Rounds appear here once you’ve planned an exercise.</EmptyState>
        ) : (
          <Table caption="Rounds, in the order of the exercises">
            <thead>
              <tr>
                <th scope="col">Exercise</th>
                <th scope="col">Round</th>
                <th scope="col">Due</th>
                <th scope="col" className="number">
                  Have sent
                </th>
                <th scope="col" className="number">
                  Released to
                </th>
                <th scope="col">Go to</th>
              </tr>
            </thead>
            <tbody>
              {rounds.map(({ exercise, number, title, dueAt, sections, sent, released }) => (
                <tr key={`${exercise.id} ${number}`}>
                  <th scope="row">{exercise.title}</th>
                  <td>
                    {number}
                    {title && `, ${title}`}
                  </td>
                  <td>
                    {dueAt ? <When at={dueAt} timeZone={course.timeZone} short /> : 'no date'}
                    <SectionDates sections={sections} timeZone={course.timeZone} />
                  </td>
                  <td className="number">
                    {sent} of {students}
                  </td>
                  <td className="number">{released}</td>
                  <td>
                    <Link href={`/exercises/${exercise.id}/class?round=${number}`}>Class in round {number}</Link>,{' '}
                    <Link href={`/exercises/${exercise.id}/rounds/${number}/critique`}>critique</Link>,{' '}
                    <Link href={`/exercises/${exercise.id}/map?round=${number}`} prefetch={false}>
                      map
                    </Link>
                  </td>
                </tr>
              ))}
            </tbody>
          </Table>
        )}
      </Page>
    </>
  );
}
