import type { Metadata } from 'next';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { ButtonLink } from '@/app/_ui/Button';
import { When } from '@/app/_ui/When';
import { Bench } from '@/app/_bench/bench';
import { openBench } from '@/lib/draft/open-bench';
import { forPage } from '@/lib/http/page';
import { FirstVisit } from '../first-visit';

type Props = { params: Promise<{ exerciseId: string; specimenId: string }> };

export const metadata: Metadata = { title: 'Bench' };

export default async function BenchPage({ params }: Props) {
  const { exerciseId, specimenId } = await params;
  const { exercise, course, round, line, place, draft, underlays, accommodations, guided, ...bench } = await forPage(openBench, { exerciseId, specimenId });
  const to = (specimen: string) => `/exercises/${exerciseId}/bench/${specimen}`;
  const laidBench = (
    <Bench
      key={draft.id}
      mode="work"
      pack={line.pack}
      size={line.size}
      ground={line.ground}
      spacing={draft.spacing}
      version={draft.version}
      draftId={draft.id}
      personKey={bench.personKey}
      tells={bench.tells}
      save={`/api/drafts/${draft.id}`}
      signIn="/sign-in"
      underlays={underlays}
      accommodations={{ workingView: accommodations.workingView, speakGaps: accommodations.gapsSpoken, singleKeysOff: accommodations.singleKeysOff }}
    />
  );
  return (
    <Page width="full">
      <PageHeader
        title={`Line ${place.index + 1} of ${place.of}`}
        trail={[{ href: `/courses/${course.id}`, label: course.title }, { href: `/exercises/${exerciseId}`, label: exercise.title }]}
        lead={bench.purpose === 'practice' ? 'A trial of your own: it is kept, and never sent.' : line.remark || undefined}
        actions={<>
          {place.before && <ButtonLink small href={to(place.before)}>Line before</ButtonLink>}
          {place.after && <ButtonLink small href={to(place.after)}>Next line</ButtonLink>}
          <ButtonLink small href={bench.purpose === 'work' ? `/exercises/${exerciseId}#send` : `/exercises/${exerciseId}`}>{bench.purpose === 'work' ? 'All lines, and sending' : 'Back to the exercise'}</ButtonLink>
          {round?.dueAt && <span className="quiet note-size">Due <When at={new Date(round.dueAt)} timeZone={course.timeZone} /></span>}
        </>}
      />
      {guided ? <FirstVisit pack={guided} personKey={bench.personKey} size={{ value: 96, unit: 'px' }} ground="light">{laidBench}</FirstVisit> : laidBench}
    </Page>
  );
}
