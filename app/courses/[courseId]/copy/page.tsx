import type { Metadata } from 'next';
import { previewCopy } from '@/lib/course/copy';
import { forPage } from '@/lib/http/page';
import { Button } from '@/app/_ui/Button';
import { Field } from '@/app/_ui/Field';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import { counted } from '@/shared/text/number';
import { CourseFrame } from '../../course-frame';
import { copyCourseAction } from '@/app/courses/actions';

export const metadata: Metadata = { title: 'Copy the course' };

type Props = {
  params: Promise<{ courseId: string }>;
  searchParams: Promise<{ weeks?: string; days?: string; dates?: string }>;
};

/** Dates are previewed by requesting the page again with other weeks; nothing is written before the last button. */
export default async function CopyCourse({ params, searchParams }: Props) {
  const { courseId } = await params;
  const asked = await searchParams;
  const dates = asked.dates === 'moved' ? 'moved' : 'empty';
  const [weeks, days] = [whole(asked.weeks ?? '52'), whole(asked.days ?? '0')];
  const shift = weeks * 7 + days;
  const copy = await forPage(previewCopy, { courseId, dates, days: shift });
  return (
    <>
      <CourseFrame course={copy.course} current="settings" />
      <Page width="wide">
        <PageHeader
          title="Copy the course to the next term"
          lead="A new course with everything that was planned, without any student’s work."
        />
        {!copy.mayMakeCourses && (
          <Notice kind="warning">
            A copy is a new course, and you may not open courses here. Ask an instructor who may, or the person who runs
            the server.
          </Notice>
        )}
        <Section title="What comes along" id="along">
          <ul>
            <li>
              {counted(copy.exercises.length, 'exercise')}, each as a draft: its lines as they are now, criteria with
              their levels, rounds with their rules for late proofs
            </li>
            <li>
              {counted(copy.references, 'reference')} that you set yourself, as yours in the new course
              {copy.othersReferences > 0 && (
                <>
                  ; {counted(copy.othersReferences, 'reference')} by others{' '}
                  {copy.othersReferences === 1 ? 'stays' : 'stay'} behind, since the people who set them belong to this
                  course
                </>
              )}
            </li>
            {copy.demonstrations > 0 && (
              <li>{counted(copy.demonstrations, 'demonstration')} that you made, not yet shown</li>
            )}
            <li>{counted(copy.stockNotes, 'shared stock note')}, as yours from then on</li>
            {copy.faces > 0 && (
              <li>
                {counted(copy.faces, 'face')} that were brought in, with what was said of their licences: check that
                they still hold next term
              </li>
            )}
          </ul>
          <p>People, sections, join links, drafts, proofs, notes, marks and releases stay here.</p>
        </Section>
        <Section title="Dates" id="dates">
          <form method="get" action="#dates" className="form" aria-label="Dates of the copy">
            <fieldset className="field">
              <legend>The dates of the rounds</legend>
              <p className="choice">
                <input type="radio" id="dates-empty" name="dates" value="empty" defaultChecked={dates === 'empty'} />{' '}
                <label htmlFor="dates-empty">empty</label>
              </p>
              <p className="choice">
                <input type="radio" id="dates-moved" name="dates" value="moved" defaultChecked={dates === 'moved'} />{' '}
                <label htmlFor="dates-moved">moved on by</label>
              </p>
              <p>
                <label htmlFor="dates-weeks">Weeks</label>{' '}
                <input type="number" id="dates-weeks" name="weeks" defaultValue={weeks} step={1} />
              </p>
              <p>
                <label htmlFor="dates-days">Days</label>{' '}
                <input type="number" id="dates-days" name="days" defaultValue={days} step={1} />
              </p>
            </fieldset>
            <div className="actions">
              <Button type="submit">Show the dates</Button>
            </div>
          </form>
          <Dates exercises={copy.exercises} timeZone={copy.course.timeZone} />
        </Section>
        {copy.mayMakeCourses && (
          <Section title="The new course" id="new">
            <Form action={copyCourseAction} label="The new course">
              <input type="hidden" name="courseId" value={courseId} />
              <input type="hidden" name="dates" value={dates} />
              <input type="hidden" name="days" value={shift} />
              <Field
                name="title"
                label="Title"
                hint="For example subject and term: Lettering, spring 2027."
                defaultValue={copy.course.title}
                autoComplete="off"
              />
              <div className="actions">
                <SubmitButton pending="Copying…">Create the copy</SubmitButton>
              </div>
            </Form>
          </Section>
        )}
      </Page>
    </>
  );
}

type Exercises = Awaited<ReturnType<typeof previewCopy>>['exercises'];

function Dates({ exercises, timeZone }: { exercises: Exercises; timeZone: string }) {
  if (exercises.every(({ rounds }) => rounds.length === 0)) return <p>No round has been planned yet.</p>;
  return (
    <Table caption={`Rounds before and after, in ${timeZone}`}>
      <thead>
        <tr>
          <th scope="col">Exercise</th>
          <th scope="col">Round</th>
          <th scope="col">Opens now</th>
          <th scope="col">Due now</th>
          <th scope="col">Opens in the copy</th>
          <th scope="col">Due in the copy</th>
        </tr>
      </thead>
      <tbody>
        {exercises.flatMap(({ title, rounds }, index) =>
          rounds.map((round) => (
            <tr key={`${index}-${round.number}`}>
              <th scope="row">{title}</th>
              <td>
                {round.number}
                {round.title && `, ${round.title}`}
              </td>
              <td>{message(round.before.opens, 'when published')}</td>
              <td>{message(round.before.due, 'no date')}</td>
              <td>{message(round.after.opens, 'when published')}</td>
              <td>
                {message(round.after.due, 'no date')}
                {round.after.until && <p className="note-size">late proofs until {message(round.after.until, '')}</p>}
                {round.remarks.map((remark) => (
                  <p key={remark} className="note-size">
                    {remark}
                  </p>
                ))}
              </td>
            </tr>
          )),
        )}
      </tbody>
    </Table>
  );
}

/** Local dates as they are typed, with the day of the week, which whole weeks don't change. */
function message(local: string | null, otherwise: string): string {
  if (local === null) return otherwise;
  return new Intl.DateTimeFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZone: 'UTC',
  }).format(new Date(`${local}:00Z`));
}

const whole = (typed: string): number => (/^-?\d{1,4}$/.test(typed) ? Number(typed) : 0);
