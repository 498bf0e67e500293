import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Section } from '@/app/_ui/Page';
import { SectionDates } from '@/app/_ui/SectionDates';
import { When } from '@/app/_ui/Status';
import { getPlan } from '@/lib/exercise/plan';
import { getStudentMinutes } from '@/lib/exercise/student-minutes';
import { forPage } from '@/lib/http/page';
import { counted, withUnit } from '@/shared/text/number';
import { publishExerciseAction } from '../actions';
import { PlanPage, SignCaution } from '../plan-page';
import { lateWords, tellingChoices, wordFor } from '../setting-words';

export const metadata: Metadata = { title: 'Publish' };

/** What students will get, what is still missing, and the button that publishes. */
export default async function Publish({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exercise, course, rounds, specimens, criteria, checks } = await forPage(getPlan, await params);
  const time = await forPage(getStudentMinutes, await params);
  if (exercise.state !== 'draft') redirect(`/exercises/${exercise.id}`);
  const stops = checks.filter((check) => check.stops);
  const worth = checks.filter((check) => !check.stops);
  return (
    <PlanPage exercise={exercise} title="Publish" lead={`Everyone in “${course.title}” will see it.`}>
      {exercise.settings.safetySigns && <SignCaution />}
      {stops.length > 0 && (
        <Notice kind="warning" title="It can’t be published yet">
          <ul>
            {stops.map(({ message, part }) => (
              <li key={message}>
                <Link href={`/exercises/${exercise.id}/plan#${part}`}>{message}</Link>
              </li>
            ))}
          </ul>
        </Notice>
      )}
      {worth.length > 0 && (
        <Notice title="Worth knowing">
          <ul>
            {worth.map(({ message, part }) => (
              <li key={message}>
                <Link href={`/exercises/${exercise.id}/plan#${part}`}>{message}</Link>
              </li>
            ))}
          </ul>
        </Notice>
      )}
      <Section title="What students get">
        <ul>
          <li>
            {counted(specimens.length, 'line')} to space: {minutesWords(time)}
          </li>
          {rounds.map((round) => (
            <li key={round.id}>
              Round {round.number}
              {round.title && `, ${round.title}`}:{' '}
              {round.opensAt ? (
                <>
                  opens <When at={round.opensAt} timeZone={course.timeZone} />
                </>
              ) : round.number === 1 ? (
                'open at once'
              ) : (
                'opens for each student with the release of the round before'
              )}
              ,{' '}
              {round.dueAt ? (
                <>
                  due <When at={round.dueAt} timeZone={course.timeZone} />; {lateWords(round.lateRule)}
                </>
              ) : (
                'without a due date'
              )}
              <SectionDates sections={round.sections} timeZone={course.timeZone} />
            </li>
          ))}
          <li>
            {criteria.length === 0
              ? 'no criteria'
              : `${counted(criteria.length, 'criterion', 'criteria')}: ${criteria.map(({ title }) => title).join(', ')}`}
          </li>
          <li>
            before a proof is sent, the bench tells:{' '}
            {wordFor(tellingChoices, exercise.settings.benchTells).toLowerCase()}
          </li>
        </ul>
        <p className="quiet">
          You can still change anything later. A published exercise can be closed, but not deleted.
        </p>
      </Section>
      <Form action={publishExerciseAction} label="Publish">
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <input type="hidden" name="version" value={exercise.version} />
        <div className="actions">
          {stops.length === 0 && <SubmitButton pending="Publishing…">Publish to the course</SubmitButton>}
          <ButtonLink href={`/exercises/${exercise.id}/plan`}>Back to the plan</ButtonLink>
        </div>
      </Form>
    </PlanPage>
  );
}

/** The estimate with where it comes from. */
function minutesWords({ gaps, minutes, seconds, students }: Awaited<ReturnType<typeof getStudentMinutes>>): string {
  const pace = `${counted(gaps, 'gap')} at ${withUnit(seconds, 's', 0)} each`;
  const source =
    students === null
      ? 'a stated figure, until three students have worked in this course'
      : `the middle pace of ${counted(students, 'student')} in this course, pauses left out`;
  return `about ${counted(minutes, 'minute')} for a student (${pace}; ${source})`;
}
