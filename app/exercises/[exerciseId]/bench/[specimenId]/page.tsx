import { Fragment } from 'react';
import type { Metadata } from 'next';
import Link from 'next/link';
import { Page, PageHeader } from '@/app/_ui/Page';
import { ButtonLink } from '@/app/_ui/Button';
import { When } from '@/app/_ui/Status';
import { Bench } from '@/app/_bench/bench';
import { openBench } from '@/lib/work/bench';
import { forPage } from '@/lib/http/page';
import { sameTextHref } from '@/app/exercises/[exerciseId]/same-text/same-text-line';
import { FirstVisit } from '../first-visit';

type Props = {
  params: Promise<{ exerciseId: string; specimenId: string }>;
  searchParams: Promise<{ trial?: string; start?: string }>;
};

export const metadata: Metadata = { title: 'Bench' };

export default async function BenchPage({ params, searchParams }: Props) {
  const { exerciseId, specimenId } = await params;
  const { trial, start: from } = await searchParams;
  const asked = { exerciseId, specimenId, trial: trial === '1', ...(from !== undefined && { start: from }) };
  const {
    exercise,
    course,
    round,
    line,
    place,
    draft,
    overlays,
    accommodations,
    guided,
    start,
    demonstrations,
    ...bench
  } = await forPage(openBench, asked);
  const to = (specimen: string, trying = asked.trial) =>
    `/exercises/${exerciseId}/bench/${specimen}${trying ? '?trial=1' : ''}`;
  const work = bench.purpose === 'work';
  const overlayBench = (
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
      overlays={overlays}
      start={start}
      smallestSize={bench.smallestSize}
      accommodations={{
        workingView: accommodations.workingView,
        speakGaps: accommodations.gapsSpoken,
        singleKeysOff: accommodations.singleKeysOff,
      }}
    />
  );
  return (
    <Page width="full">
      <PageHeader
        title={`Line ${place.index + 1} of ${place.of}`}
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exerciseId}`, label: exercise.title },
        ]}
        lead={work ? line.remark || undefined : 'A trial of your own: it is kept, and never sent.'}
        actions={
          <>
            {place.before && (
              <ButtonLink small href={to(place.before)}>
                Previous line
              </ButtonLink>
            )}
            {place.after && (
              <ButtonLink small href={to(place.after)}>
                Next line
              </ButtonLink>
            )}
            {bench.ofThisText > 1 && (
              <ButtonLink small href={sameTextHref(exerciseId, line.text)}>
                All {bench.ofThisText} spacings of it
              </ButtonLink>
            )}
            {bench.trial && (
              <ButtonLink small href={`${to(specimenId, false)}?start=trial`}>
                Start my line from this trial
              </ButtonLink>
            )}
            {work && (
              <ButtonLink small href={to(specimenId, true)}>
                Try it without sending
              </ButtonLink>
            )}
            <ButtonLink small href={work ? `/exercises/${exerciseId}#send` : `/exercises/${exerciseId}`}>
              {work ? 'All lines, and sending' : 'Back to the exercise'}
            </ButtonLink>
            {round?.dueAt && (
              <span className="quiet note-size">
                Due <When at={new Date(round.dueAt)} timeZone={course.timeZone} />
              </span>
            )}
          </>
        }
      />
      {demonstrations.length > 0 && (
        <p className="note-size">
          Look at how it was set:{' '}
          {demonstrations.map(({ id, title }, index) => (
            <Fragment key={id}>
              {index > 0 && ', '}
              <Link href={`/exercises/${exerciseId}/demonstrations/${id}`}>{title}</Link>
            </Fragment>
          ))}
        </p>
      )}
      {guided ? (
        <FirstVisit pack={guided} personKey={bench.personKey} size={{ value: 96, unit: 'px' }} ground="light">
          {overlayBench}
        </FirstVisit>
      ) : (
        overlayBench
      )}
    </Page>
  );
}
