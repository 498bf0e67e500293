import type { Metadata } from 'next';
import Link from 'next/link';
import { Page, PageHeader } from '@/app/_ui/Page';
import { getTerm } from '@/lib/class/term';
import { getCourse } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { CourseFrame } from '../../../../course-frame';
import { TermView } from '../../../term/term-view';

type Props = { params: Promise<{ courseId: string; memberId: string }> };

export const metadata: Metadata = { title: 'A student’s term' };

/**
 * One student’s term on one page, to discuss with them: marks as they were released, and nothing of a round in which
 * names are hidden.
 */
export default async function TermPage({ params }: Props) {
  const { courseId, memberId } = await params;
  const [term, course] = await Promise.all([
    forPage(getTerm, { courseId, memberId }),
    forPage(getCourse, { courseId }),
  ]);
  return (
    <>
      <CourseFrame course={course} current="people" />
      <Page width="wide">
        <PageHeader
          title={`${term.student.name}: the term`}
          trail={[{ href: `/courses/${courseId}/people`, label: 'People' }]}
          lead={`${term.student.section ? `Section ${term.student.section}. ` : ''}Marks appear here once they are released, so you can go through the page with the student.`}
        />
        <TermView term={term} />
        <p className="quiet note-size">
          This page is an education record of one person. Print or show it to them and to those who must see it, by the
          school’s policy and local law. <Link href="/records">Records and privacy</Link>
        </p>
      </Page>
    </>
  );
}
