import { ButtonLink } from '@/app/_ui/Button';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { standAtExercise } from '@/lib/exercise/stand-at-exercise';
import { forPage } from '@/lib/http/page';

/** The exercise as staff look after it. */
export async function StaffOverview({ exerciseId }: { exerciseId: string }) {
  const { title } = await forPage(standAtExercise, { exerciseId });
  return (
    <Page>
      <PageHeader title={title} actions={<><ButtonLink href={`/exercises/${exerciseId}/plan`}>Plan</ButtonLink><ButtonLink href={`/exercises/${exerciseId}/class`}>Class</ButtonLink></>} />
    </Page>
  );
}
