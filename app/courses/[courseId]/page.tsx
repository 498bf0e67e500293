import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Notice, Page, PageHeader } from '@/app/_ui/Page';
import { SectionDates } from '@/app/_ui/SectionDates';
import { When } from '@/app/_ui/Status';
import { getRetention } from '@/lib/course/retention';
import { getCourse } from '@/lib/course/courses';
import { listExercises, listRemovedExercises } from '@/lib/exercise/exercises';
import type { roundView } from '@/lib/rows/exercise';
import { forPage } from '@/lib/http/page';
import { leadsCourse, teaches } from '@/shared/schemas/course';
import { counted } from '@/shared/text/number';
import { CourseFrame } from '../course-frame';
import { retentionWords } from './retention/retention-words';

type Props = { params: Promise<{ courseId: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await forPage(getCourse, await params)).title };
}

export default async function Course({ params }: Props) {
  const { courseId } = await params;
  const course = await forPage(getCourse, { courseId });
  const exercises = await forPage(listExercises, { courseId });
  const leads = leadsCourse(course.role);
  const removed = leads ? (await forPage(listRemovedExercises, { courseId })).length : 0;
  const retention = leads ? await forPage(getRetention, { courseId }) : null;
  const post = (
    <ButtonLink kind="main" href={`/courses/${courseId}/exercises/new`}>
      Plan an exercise
    </ButtonLink>
  );
  return (
    <>
      <CourseFrame course={course} current="exercises" />
      <Page>
        <PageHeader title="Exercises" actions={leads && exercises.length > 0 ? post : undefined} />
        {retention?.near && retention.students > 0 && retention.retainUntil !== null && retention.daysLeft !== null && (
          <Notice kind="warning">
            {retentionWords(retention.retainUntil, retention.daysLeft)}{' '}
            <Link href={`/courses/${courseId}/retention`}>What that means</Link>
          </Notice>
        )}
        {exercises.length === 0 &&
          (leads ? (
            <FirstSteps courseId={courseId} post={post} />
          ) : (
            <EmptyState title="Nothing is posted yet">
              {!teaches(course.role)
                ? 'When your instructor posts an exercise, it appears here with its dates.'
                : 'When the instructor posts an exercise, it appears here, and its proofs arrive for critique.'}
            </EmptyState>
          ))}
        {exercises.length > 0 && (
          <ul className="card-list">
            {exercises.map((exercise) => (
              <li key={exercise.id}>
                <h2>
                  <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
                </h2>
                <RoundLines rounds={exercise.rounds} timeZone={course.timeZone} />
                <p className="quiet note-size">
                  {counted(exercise.specimens, 'line')}
                  {exercise.state === 'draft' && ' · being planned, students don’t see it'}
                  {exercise.state === 'closed' && ' · closed'}
                </p>
              </li>
            ))}
          </ul>
        )}
        {removed > 0 && (
          <p className="note-size">
            <Link href={`/courses/${courseId}/exercises/removed`}>Removed drafts ({removed})</Link>
          </p>
        )}
      </Page>
    </>
  );
}

function FirstSteps({ courseId, post }: { courseId: string; post: React.ReactNode }) {
  return (
    <EmptyState
      title="The course is open"
      action={
        <div className="actions">
          {post}
          <ButtonLink href={`/courses/${courseId}/people`}>Invite people</ButtonLink>
        </div>
      }
    >
      Two things come next, in either order: invite people by a link, and plan the first exercise. Students see it when
      you publish it.
    </EmptyState>
  );
}

type Round = ReturnType<typeof roundView>;

/** When each round opens and is due, one line a round. */
function RoundLines({ rounds, timeZone }: { rounds: readonly Round[]; timeZone: string }) {
  return (
    <ul role="list">
      {rounds.map((round) => (
        <li key={round.id}>
          Round {round.number}
          {round.title && <>, {round.title}</>}
          {round.dueAt ? (
            <>
              : due <When at={round.dueAt} timeZone={timeZone} />
            </>
          ) : (
            ': no date set'
          )}
          <SectionDates sections={round.sections} timeZone={timeZone} />
        </li>
      ))}
    </ul>
  );
}
