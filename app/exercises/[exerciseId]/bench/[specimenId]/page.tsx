import type { Metadata } from 'next';
import Link from 'next/link';
import { BarOnward, BarPlace } from '@/app/_ui/WorkBar';
import { Page } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { Bench } from '@/app/_bench/bench';
import { openBench } from '@/lib/work/bench';
import { forPage } from '@/lib/http/page';
import { sameTextHref } from '@/app/exercises/[exerciseId]/same-text/same-text-line';
import { withUnit } from '@/shared/text/number';
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
  const workbench = (
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
      began={line.began?.spacing ?? null}
      smallestSize={bench.smallestSize}
      place={
        <BarPlace
          back={{ href: `/exercises/${exerciseId}`, label: exercise.title }}
          title={`Line ${place.index + 1} of ${place.of}`}
          line={`${line.face}, ${withUnit(line.size.value, line.size.unit)}`}
          remark={work ? line.remark : 'A trial of your own: it is kept, and never sent.'}
        />
      }
      onward={
        <BarOnward
          due={round?.dueAt ? <When short yours at={new Date(round.dueAt)} timeZone={course.timeZone} /> : null}
          previous={place.before && to(place.before)}
          next={place.after && to(place.after)}
          main={{
            href: work ? `/exercises/${exerciseId}#send` : `/exercises/${exerciseId}`,
            label: work ? 'All lines, and sending' : 'Back to the exercise',
          }}
        >
          {bench.ofThisText > 1 && (
            <Link href={sameTextHref(exerciseId, line.text)}>All {bench.ofThisText} spacings of it</Link>
          )}
          {bench.trial && <Link href={`${to(specimenId, false)}?start=trial`}>Start my line from this trial</Link>}
          {work && <Link href={to(specimenId, true)}>Try it without sending</Link>}
          {demonstrations.map(({ id, title }) => (
            <Link key={id} href={`/exercises/${exerciseId}/demonstrations/${id}`}>
              See how it was set: {title}
            </Link>
          ))}
        </BarOnward>
      }
      accommodations={{
        workingView: accommodations.workingView,
        rulerOfOwn: bench.rulerOfOwn,
        speakGaps: accommodations.gapsSpoken,
        singleKeysOff: accommodations.singleKeysOff,
      }}
    />
  );
  return (
    <Page width="workbench">
      <FirstVisit
        guide={guided && { pack: guided, personKey: bench.personKey, size: { value: 96, unit: 'px' }, ground: 'light' }}
      >
        {workbench}
      </FirstVisit>
    </Page>
  );
}
