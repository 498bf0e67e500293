import type { Metadata } from 'next';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { getPlan } from '@/lib/exercise/plan';
import { meantTime } from '@/lib/exercise/local-time';
import type { ExerciseView } from '@/lib/rows/exercise';
import { forPage } from '@/lib/http/page';
import { counted, withUnit } from '@/shared/text/number';
import { StaffFrame } from '../staff-frame';
import { restoreExerciseAction } from './actions';
import { Checklist } from './checklist';
import { CriteriaPart } from './criteria-part';
import { RoundsPart } from './rounds-part';
import { shownChoices, tellingChoices, wordFor } from './setting-words';
import { SignCaution } from './plan-page';
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
        />
        {exercise.state === 'draft' && <Checklist plan={plan} />}
        {Number(made) > 0 && (
          <Notice live="polite">{counted(Number(made), 'line')} added at the end of the list.</Notice>
        )}
        {changed && <ClockRemarks round={changed} timeZone={course.timeZone} />}
        {exercise.settings.safetySigns && <SignCaution />}
        <SpecimensPart exercise={exercise} specimens={plan.specimens} retired={plan.retiredSpecimens} checks={checks} />
        <RoundsPart exercise={exercise} rounds={plan.rounds} timeZone={course.timeZone} />
        <CriteriaPart exercise={exercise} criteria={plan.criteria} retired={plan.retiredCriteria} />
        <BriefPart exercise={exercise} />
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
  draft: 'A draft: only instructors and assistants see it.',
  published: 'Published. You’ll see the effect of a change before you make it.',
  closed: 'Closed: students can look and send nothing more.',
};

type AsideProps = {
  exercise: { id: string; title: string; version: number; removedAt: Date | null };
  course: { id: string; title: string; timeZone: string };
};

/** A draft that was removed: when, and the button that restores it. */
function Aside({ exercise, course }: AsideProps) {
  const back = (
    <Form action={restoreExerciseAction} label="Restore the exercise">
      <input type="hidden" name="exerciseId" value={exercise.id} />
      <input type="hidden" name="version" value={exercise.version} />
      <SubmitButton>Restore</SubmitButton>
    </Form>
  );
  return (
    <Page>
      <PageHeader title={exercise.title} trail={[{ href: `/courses/${course.id}`, label: course.title }]} />
      <EmptyState title="This draft was removed" action={back}>
        It went from the list <When at={exercise.removedAt!} timeZone={course.timeZone} />. Everything in it is still
        here, and it can be restored.
      </EmptyState>
    </Page>
  );
}

/** The brief as students read it, and the settings in words. */
function BriefPart({ exercise }: { exercise: ExerciseView }) {
  const { settings, brief } = exercise;
  return (
    <Section
      id="brief"
      title="Brief and options"
      actions={<ButtonLink href={`/exercises/${exercise.id}/plan/brief`}>Change the brief and options</ButtonLink>}
    >
      {brief.trim() === '' ? (
        <p className="quiet">No brief yet.</p>
      ) : (
        <div className="reading stack">
          {brief.split(/\n{2,}/).map((paragraph, index) => (
            <p key={index}>{paragraph}</p>
          ))}
        </div>
      )}
      <dl className="facts">
        <dt>Before a proof is sent, the bench tells</dt>
        <dd>{wordFor(tellingChoices, settings.benchTells).toLowerCase()}</dd>
        <dt>After it</dt>
        <dd>{wordFor(tellingChoices, settings.benchTellsAfterProof).toLowerCase()}</dd>
        <dt>Students see references</dt>
        <dd>{wordFor(shownChoices, settings.referencesShown).toLowerCase()}</dd>
        <dt>Tolerance where a reference gives none</dt>
        <dd>±{withUnit(settings.tolerance, 'thousandths of an em')}</dd>
        <dt>Smallest size of use</dt>
        <dd>
          {settings.smallestSize ? withUnit(settings.smallestSize.value, settings.smallestSize.unit, 1) : 'not named'}
        </dd>
        <dt>Names while marking</dt>
        <dd>{settings.namesHidden ? 'hidden' : 'shown'}</dd>
      </dl>
    </Section>
  );
}

type ClockRemarksProps = {
  round: {
    number: number;
    opensLocal: string | null;
    dueLocal: string | null;
    lateRule: { untilLocal: string | null };
  };
  timeZone: string;
};

/** After a round was saved: how a time was read on a day when the clocks change. Empty on most days. */
function ClockRemarks({ round, timeZone }: ClockRemarksProps) {
  const times = [
    [round.opensLocal, 'opens'],
    [round.dueLocal, 'due'],
    [round.lateRule.untilLocal, 'due'],
  ] as const;
  const remarks = times.flatMap(([local, use]) => (local ? (meantTime(local, timeZone, use).remark ?? []) : []));
  return (
    <Notice live="polite" title={`Round ${round.number} is saved.`}>
      {remarks.length === 0 ? null : (
        <ul>
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
    </Notice>
  );
}
