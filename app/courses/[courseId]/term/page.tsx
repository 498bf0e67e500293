import type { Metadata } from 'next';
import Link from 'next/link';
import { Page, PageHeader } from '@/app/_ui/Page';
import { getOwnTerm } from '@/lib/class/term';
import { getCourse } from '@/lib/course/courses';
import { forPage } from '@/lib/http/page';
import { CourseFrame } from '../../course-frame';
import { TermView } from './term-view';

type Props = { params: Promise<{ courseId: string }> };

export const metadata: Metadata = { title: 'My term' };

/** A student’s own term: what was sent in each round, and what was released. */
export default async function OwnTermPage({ params }: Props) {
  const { courseId } = await params;
  const [term, course] = await Promise.all([forPage(getOwnTerm, { courseId }), forPage(getCourse, { courseId })]);
  return (
    <>
      <CourseFrame course={course} current="term" />
      <Page width="wide">
        <PageHeader
          title="My term"
          lead="What you sent, and what was released to you. Until a round is released, you see only that your proof arrived."
        />
        <TermView term={term} own />
        <p className="quiet note-size">
          Two spacings can both be right: distance from a reference is not a mark. <Link href="/words">The words</Link>
        </p>
      </Page>
    </>
  );
}
