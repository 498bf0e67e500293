import type { Metadata } from 'next';
import { EmptyState } from '@/app/_ui/EmptyState';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { showProgress } from '@/lib/class/show-progress';
import { forPage } from '@/lib/http/page';
import { ProgressCharts } from './progress-charts';

type Props = { params: Promise<{ exerciseId: string }> };

export const metadata: Metadata = { title: 'Progress' };

/** From round to round: how far the class is from the references, how even its lines are, which way the pairs moved. */
export default async function ProgressPage({ params }: Props) {
  const { exerciseId } = await params;
  const { course, exercise, rounds } = await forPage(showProgress, { exerciseId });
  return (
    <Page width="wide">
      <PageHeader
        title="From round to round"
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          { href: `/exercises/${exercise.id}/class`, label: 'Class' },
        ]}
        lead="What the class sees now that it did not see before. Lines that were sent in one round only say nothing of progress."
      />
      {rounds.length === 0 ? (
        <EmptyState title="Nothing sent yet">
          Once proofs of a round come in, it stands here, and the next one beside it.
        </EmptyState>
      ) : (
        <ProgressCharts rounds={rounds} />
      )}
    </Page>
  );
}
