import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { Notice } from '@/app/_ui/Notice';
import { getPlan } from '@/lib/exercise/get-plan';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';
import { StaffFrame } from '../staff-frame';
import { Aside } from './aside';
import { BriefPart } from './brief-part';
import { ClockRemarks } from './clock-remarks';
import { CriteriaPart } from './criteria-part';
import { RoundsPart } from './rounds-part';
import { SignCaution } from './sign-caution';
import { SpecimensPart } from './specimens-part';

export const metadata: Metadata = { title: 'Plan' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ made?: string; round?: string }> };

/** The plan of an exercise, part by part, each with the page that changes it. */
export default async function Plan({ params, searchParams }: Props) {
  const plan = await forPage(getPlan, await params);
  const { made, round } = await searchParams;
  const { exercise, course, checks } = plan;
  if (exercise.removedAt) return <Aside exercise={exercise} course={course} />;
  const changed = plan.rounds.find(({ id }) => id === round);
  return (
    <>
      <StaffFrame exercise={exercise} current="plan" mayPlan />
      <Page width="wide">
        <PageHeader
          title="Plan"
          trail={[{ href: `/courses/${course.id}`, label: course.title }]}
          lead={stateWords[exercise.state]}
          actions={
            exercise.state === 'draft' ? (
              <ButtonLink kind="main" href={`/exercises/${exercise.id}/plan/publish`}>
                Publish…
              </ButtonLink>
            ) : undefined
          }
        />
        {Number(made) > 0 && (
          <Notice live="polite">{counted(Number(made), 'specimen')} made. They stand at the end of the list.</Notice>
        )}
        {changed && <ClockRemarks round={changed} timeZone={course.timeZone} />}
        {exercise.settings.safetySigns && <SignCaution />}
        <BriefPart exercise={exercise} />
        <SpecimensPart exercise={exercise} specimens={plan.specimens} retired={plan.retiredSpecimens} checks={checks} />
        <RoundsPart exercise={exercise} rounds={plan.rounds} timeZone={course.timeZone} />
        <CriteriaPart exercise={exercise} criteria={plan.criteria} retired={plan.retiredCriteria} />
        {exercise.state === 'draft' && (
          <div className="actions">
            <ButtonLink kind="grave" href={`/exercises/${exercise.id}/plan/remove`}>
              Remove this draft…
            </ButtonLink>
          </div>
        )}
        {exercise.state === 'published' && (
          <div className="actions">
            <ButtonLink kind="grave" href={`/exercises/${exercise.id}/plan/close`}>
              Close the exercise…
            </ButtonLink>
          </div>
        )}
      </Page>
    </>
  );
}

const stateWords = {
  draft: 'A draft: only teachers see it.',
  published: 'Published. Every change says first what it does.',
  closed: 'Closed: students can look and send nothing more.',
};
