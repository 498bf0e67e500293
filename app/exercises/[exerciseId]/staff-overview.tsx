import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { SectionDates } from '@/app/_ui/SectionDates';
import { Progress, Status, When } from '@/app/_ui/Status';
import { getOverview, type Overview } from '@/lib/exercise/plan';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';
import { reopenExerciseAction } from './plan/actions';
import { lateWords } from './plan/setting-words';
import { SignCaution } from './plan/plan-page';
import { SpecimenFigure } from './plan/specimens/specimen-figure';
import { lineWords } from '@/shared/line/line-words';
import { StaffFrame } from './staff-frame';
import { sameTextHref } from './same-text/same-text-line';

/** The staff's overview of an exercise: each round with what there is to do, then the lines. */
export async function StaffOverview({ exerciseId, published }: { exerciseId: string; published?: boolean }) {
  const overview = await forPage(getOverview, { exerciseId });
  const { exercise, course, mayPlan, rounds, students, specimens } = overview;
  return (
    <>
      <StaffFrame exercise={exercise} current="overview" mayPlan={mayPlan} />
      <Page width="wide">
        <PageHeader
          title={exercise.title}
          trail={[{ href: `/courses/${course.id}`, label: course.title }]}
          lead={leadWords(overview)}
          actions={<NextStep overview={overview} />}
        />
        {published && exercise.state === 'published' && (
          <Notice live="polite">Published: everyone in the course can see it now.</Notice>
        )}
        {exercise.settings.safetySigns && <SignCaution />}
        <Section title="Rounds">
          {rounds.length === 0 ? (
            <p className="quiet">No round yet.</p>
          ) : (
            <ul className="card-list">
              {rounds.map((round) => (
                <StaffRound
                  key={round.id}
                  exercise={exercise}
                  round={round}
                  students={students}
                  timeZone={course.timeZone}
                  mayRelease={mayPlan}
                />
              ))}
            </ul>
          )}
        </Section>
        <Section
          title="Lines"
          lead={
            specimens.length === 0
              ? undefined
              : `${overview.referenced} of ${counted(specimens.length, 'line')} have a reference.`
          }
        >
          {specimens.length === 0 ? (
            <EmptyState
              title="No lines yet"
              action={
                mayPlan ? (
                  <ButtonLink href={`/exercises/${exerciseId}/plan/specimens/new`}>Add lines</ButtonLink>
                ) : undefined
              }
            >
              The exercise has nothing to space so far.
            </EmptyState>
          ) : (
            <ol className="specimen-list" role="list">
              {specimens.map((specimen, index) => (
                <li key={specimen.id}>
                  <SpecimenFigure {...specimen} caption={`${index + 1}. “${specimen.text}”, ${lineWords(specimen)}`} />
                  <div className="actions">
                    <ButtonLink small kind="text" href={`/exercises/${exerciseId}/bench/${specimen.id}`}>
                      Try it without sending<span className="visually-hidden"> (line {index + 1})</span>
                    </ButtonLink>
                    {isTogether(specimens, specimen.text) && (
                      <ButtonLink small kind="text" href={sameTextHref(exerciseId, specimen.text)}>
                        All spacings of it<span className="visually-hidden"> (line {index + 1})</span>
                      </ButtonLink>
                    )}
                  </div>
                </li>
              ))}
            </ol>
          )}
        </Section>
      </Page>
    </>
  );
}

const isTogether = (specimens: Overview['specimens'], text: string): boolean =>
  specimens.filter((one) => one.text === text).length > 1;

function leadWords({ exercise, students }: Overview): string {
  if (exercise.state === 'draft') return 'A draft: only instructors and assistants see it.';
  if (exercise.state === 'closed') return 'Closed: students can look and send nothing more.';
  return students === 0
    ? 'Published. No student has joined the course yet.'
    : `Published to ${counted(students, 'student')}.`;
}

function NextStep({ overview: { exercise, mayPlan, course, students } }: { overview: Overview }) {
  const to = `/exercises/${exercise.id}`;
  if (exercise.state === 'draft')
    return mayPlan ? (
      <>
        <ButtonLink kind="main" href={`${to}/plan`}>
          Continue planning
        </ButtonLink>
        <ButtonLink href={`${to}/plan/publish`}>Publish…</ButtonLink>
      </>
    ) : (
      <ButtonLink href={`${to}/references`}>Set references</ButtonLink>
    );
  if (exercise.state === 'closed') {
    return mayPlan ? (
      <Form action={reopenExerciseAction} label="Open it again" inline>
        <input type="hidden" name="exerciseId" value={exercise.id} />
        <input type="hidden" name="version" value={exercise.version} />
        <SubmitButton kind="usual">Open it again</SubmitButton>
      </Form>
    ) : null;
  }
  return students === 0 && mayPlan ? (
    <ButtonLink kind="main" href={`/courses/${course.id}/people`}>
      Invite people
    </ButtonLink>
  ) : (
    <ButtonLink href={`${to}/class`}>The class so far</ButtonLink>
  );
}

type Props = {
  exercise: Overview['exercise'];
  round: Overview['rounds'][number];
  students: number;
  timeZone: string;
  mayRelease: boolean;
};

/** One round for staff: its dates, which students have sent, and the links to critique and release. */
function StaffRound({ exercise, round, students, timeZone, mayRelease }: Props) {
  const to = `/exercises/${exercise.id}/rounds/${round.number}`;
  return (
    <li>
      <h3>
        Round {round.number}
        {round.title && `: ${round.title}`}
      </h3>
      <p>
        {round.opensAt ? (
          <>
            Opens <When at={round.opensAt} timeZone={timeZone} />.{' '}
          </>
        ) : round.number === 1 ? (
          'Opens with publication. '
        ) : (
          'Opens for each student with the release of the round before. '
        )}
        {round.dueAt ? (
          <>
            Due <When at={round.dueAt} timeZone={timeZone} />; {lateWords(round.lateRule)}.
          </>
        ) : (
          'No due date.'
        )}
      </p>
      <SectionDates sections={round.sections} timeZone={timeZone} />
      <p className="note-size">
        <Status kind={stateKind[round.state]}>{stateWords[round.state]}</Status>
        {exercise.state !== 'draft' && students > 0 && (
          <>
            {' '}
            · <Progress done={round.senders} of={students} what="student" verb="have sent" />
          </>
        )}
      </p>
      {round.senders > 0 && (
        <div className="actions">
          <ButtonLink small href={`${to}/critique`}>
            Critique
          </ButtonLink>
          <ButtonLink small href={`${to}/wall`}>
            Wall
          </ButtonLink>
          {mayRelease && (
            <ButtonLink small href={`${to}/release`}>
              Release…
            </ButtonLink>
          )}
        </div>
      )}
    </li>
  );
}

const stateKind = { open: 'waiting', marking: 'going', released: 'done' } as const;
const stateWords = { open: 'Not marked yet', marking: 'Being marked', released: 'Released' } as const;
