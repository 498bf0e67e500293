import Link from 'next/link';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { ButtonLink } from '@/app/_ui/Button';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { When } from '@/app/_ui/Status';
import { takeNextAction } from '@/app/exercises/[exerciseId]/rounds/[number]/actions';
import type { StaffStep, StudentStep } from '@/lib/work/next-steps';
import { counted, withUnit } from '@/shared/text/number';

/** One thing to do now, large, under the notes that came last, whichever exercise they are of; what else there is, quiet. */
export function StudentSteps({ steps }: { steps: readonly StudentStep[] }) {
  const [first, ...others] = steps;
  if (!first) return null;
  const [newest] = steps
    .filter(({ notes }) => notes !== null)
    .sort((a, b) => b.notes!.releasedAt.localeCompare(a.notes!.releasedAt));
  return (
    <>
      <MainStep step={first} newest={newest} />
      {others.length > 0 && (
        <ul className="steps-quiet" role="list">
          {others.map((step) => (
            <li key={step.exercise.id}>
              <Link href={`/exercises/${step.exercise.id}`}>{step.exercise.title}</Link>
              <span>{standing(step)}</span>
              <Due step={step} />
              {step !== newest && <Notes step={step} />}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Notes({ step: { notes } }: { step: StudentStep }) {
  return notes && <Link href={`/proofs/${notes.proofId}`}>Notes of round {notes.round}</Link>;
}

function MainStep({ step, newest }: { step: StudentStep; newest: StudentStep | undefined }) {
  const { exercise, line, round } = step;
  const notes = newest?.notes;
  const bench = line && `/exercises/${exercise.id}/bench/${line.specimenId}`;
  const open = step.takesProofs && step.sentAt === null;
  return (
    <section className="step-now" aria-label="To do now">
      {notes && (
        <p className="step-notes">
          <strong>Your notes are out.</strong>{' '}
          <span className="quiet">
            {newest.exercise.title}, round {notes.round},{' '}
            <When short at={notes.releasedAt} timeZone={newest.course.timeZone} />
          </span>{' '}
          <ButtonLink kind={open ? 'usual' : 'main'} href={`/proofs/${notes.proofId}`}>
            Read your notes
          </ButtonLink>
        </p>
      )}
      {line && bench && round && (
        <>
          <p className="step-words">
            <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
            <span className="quiet">
              round {round.number} of {round.of}
            </span>
            <Due step={step} />
          </p>
          <Link
            href={bench}
            className="step-line"
            aria-label={`Line ${line.place}: ${line.text}. Space it on the bench`}
          >
            <SheetFrame
              ground={line.ground}
              caption={`Line ${line.place} of ${step.lines}. ${line.face}, ${withUnit(line.size.value, line.size.unit)}`}
            >
              <LineDrawing pack={line.pack} spacing={line.spacing} label={null} />
            </SheetFrame>
          </Link>
          <p className="step-go">
            <ButtonLink kind={open || !notes ? 'main' : 'usual'} href={bench}>
              {step.touched === 0 ? 'Start with the first line' : 'Space this line'}
            </ButtonLink>
            {step.touched > 0 && step.takesProofs && (
              <ButtonLink href={`/exercises/${exercise.id}#send`}>
                {step.sentAt ? 'Send again' : 'Send a proof'}
              </ButtonLink>
            )}
            <span className="quiet">{standing(step)}</span>
            {step !== newest && <Notes step={step} />}
          </p>
        </>
      )}
      {!line && (
        <p className="step-words">
          <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
          <span className="quiet">
            {step.opensAt ? (
              <>
                opens <When short yours at={new Date(step.opensAt)} timeZone={step.course.timeZone} />
              </>
            ) : (
              'not open yet'
            )}
          </span>
        </p>
      )}
    </section>
  );
}

function standing({ touched, lines, sentAt, round }: StudentStep): string {
  if (!round) return 'not open yet';
  if (sentAt) return 'proof sent';
  if (lines === 0) return 'no lines yet';
  return touched === lines
    ? `all ${counted(lines, 'line')} spaced, not sent`
    : `${touched} of ${counted(lines, 'line')} spaced`;
}

function Due({ step: { dueAt, course } }: { step: Pick<StudentStep, 'dueAt' | 'course'> }) {
  if (dueAt === null) return null;
  return (
    <span className="quiet">
      due <When short yours at={new Date(dueAt)} timeZone={course.timeZone} />
    </span>
  );
}

/** Each round in which something waits: its lines, how far it is, and the desk one press away. */
export function StaffSteps({ steps }: { steps: readonly StaffStep[] }) {
  const firstWaiting = steps.findIndex(({ sent, marked }) => sent > marked);
  if (steps.length === 0) return null;
  return (
    <ol className="staff-steps" role="list">
      {steps.map((step, index) => (
        <li key={`${step.exercise.id}/${step.round.number}`}>
          <Round step={step} main={index === firstWaiting} />
        </li>
      ))}
    </ol>
  );
}

function Round({ step, main }: { step: StaffStep; main: boolean }) {
  const { exercise, course, round, sent, marked, released, students } = step;
  const to = `/exercises/${exercise.id}/rounds/${round.number}`;
  return (
    <section aria-label={`${exercise.title}, round ${round.number}`}>
      <p className="step-words">
        <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
        <span className="quiet">
          round {round.number}, {course.title}
        </span>
        <Due step={step} />
      </p>
      <div className="step-lines" aria-hidden="true">
        {step.lines.map((line) => (
          <SheetFrame key={line.versionId} ground={line.ground} bare>
            <LineDrawing
              pack={line.pack}
              spacing={{ tracking: 0, offsets: line.pack.builtIn.map(() => 0) }}
              label={null}
            />
          </SheetFrame>
        ))}
        {step.more > 0 && <span className="quiet">and {step.more} more</span>}
      </div>
      <div className="step-go">
        <span>
          <strong>
            {sent} of {counted(students, 'student')}
          </strong>{' '}
          sent{sent > 0 && <>, {marked === 0 ? 'none' : marked === sent ? 'all' : marked} marked</>}
          {sent > 0 && <>, {released === 0 ? 'none' : released} released</>}
        </span>
        {sent > marked && (
          <Form
            action={takeNextAction}
            label={`Mark the next proof of ${exercise.title}, round ${round.number}`}
            inline
          >
            <input type="hidden" name="exerciseId" value={exercise.id} />
            <input type="hidden" name="roundNumber" value={round.number} />
            <input type="hidden" name="section" value="" />
            <SubmitButton kind={main ? 'main' : 'usual'} pending="Taking…">
              Mark the next proof
            </SubmitButton>
          </Form>
        )}
        {sent > 0 && <Link href={`${to}/critique`}>Queue</Link>}
        {step.mayRelease && marked > released && <Link href={`${to}/release`}>Release</Link>}
        {sent > 0 && <Link href={`/exercises/${exercise.id}/class`}>Class</Link>}
      </div>
    </section>
  );
}
