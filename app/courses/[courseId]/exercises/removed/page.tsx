import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState, Page, PageHeader } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { getCourse } from '@/lib/course/courses';
import { listRemovedExercises } from '@/lib/exercise/exercises';
import { forPage } from '@/lib/http/page';

export const metadata: Metadata = { title: 'Removed drafts' };

/** Drafts that were removed, each with the page that restores it. */
export default async function RemovedDrafts({ params }: { params: Promise<{ courseId: string }> }) {
  const { courseId } = await params;
  const [course, drafts] = await Promise.all([
    forPage(getCourse, { courseId }),
    forPage(listRemovedExercises, { courseId }),
  ]);
  return (
    <Page>
      <PageHeader
        title="Removed drafts"
        trail={[
          { href: '/courses', label: 'Courses' },
          { href: `/courses/${courseId}`, label: course.title },
        ]}
      />
      {drafts.length === 0 ? (
        <EmptyState title="Nothing was removed">
          A draft that was removed from the list can be restored here.
        </EmptyState>
      ) : (
        <ul className="card-list">
          {drafts.map((draft) => (
            <li key={draft.id}>
              <h2>
                <Link href={`/exercises/${draft.id}/plan`}>{draft.title}</Link>
              </h2>
              <p className="quiet note-size">
                Removed <When at={draft.removedAt!} timeZone={course.timeZone} />
              </p>
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}
