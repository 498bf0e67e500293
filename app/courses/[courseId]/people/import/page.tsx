import type { Metadata } from 'next';
import { getRosterOptions } from '@/lib/course/roster';
import { forPage } from '@/lib/http/page';
import { Page, PageHeader } from '@/app/_ui/Page';
import { CourseFrame } from '../../../course-frame';
import { RosterForm } from './roster-form';

export const metadata: Metadata = { title: 'Import a roster' };

type Props = { params: Promise<{ courseId: string }> };

export default async function ImportRoster({ params }: Props) {
  const { courseId } = await params;
  const { course, byMail } = await forPage(getRosterOptions, { courseId });
  return (
    <>
      <CourseFrame course={course} current="people" />
      <Page width="wide">
        <PageHeader
          title="Import a roster"
          lead="Rows of a class list as CSV: paste them, or choose a file. You see what will happen before anything is written."
        />
        <RosterForm courseId={courseId} byMail={byMail} />
      </Page>
    </>
  );
}
