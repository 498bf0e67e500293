import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { When } from '@/app/_ui/Status';
import { type DemonstrationView, listDemonstrations } from '@/lib/work/demonstrations';
import { forPage } from '@/lib/http/page';
import { leadsCourse, teaches } from '@/shared/schemas/course';
import { counted } from '@/shared/text/number';
import { SpecimenFigure } from '../plan/specimens/specimen-figure';
import { StaffFrame } from '../staff-frame';
import { RemoveForm, ShowForm, showingWords } from './show-form';

export const metadata: Metadata = { title: 'Demonstrations' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ removed?: string }> };

/** Recorded demonstrations: all of them for staff, the shown ones for students. */
export default async function Demonstrations({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { exercise, course, role, demonstrations, removed } = await forPage(listDemonstrations, { exerciseId });
  const forStaff = teaches(role);
  const last = (await searchParams).removed;
  const undo = removed.find(({ id }) => id === last);
  return (
    <>
      {forStaff && <StaffFrame exercise={exercise} current="demonstrations" mayPlan={leadsCourse(role)} />}
      <Page width="wide">
        <PageHeader
          title="Demonstrations"
          trail={[
            { href: `/courses/${course.id}`, label: course.title },
            ...(forStaff ? [] : [{ href: `/exercises/${exerciseId}`, label: exercise.title }]),
          ]}
          lead={
            forStaff
              ? 'A line as it was set, step by step, with reasons.'
              : 'How an instructor spaced a line, step by step, with reasons. Other spacings can be right as well.'
          }
        />
        {undo && (
          <Notice live="polite">
            <p>“{undo.title}” is removed.</p>
            <RemoveForm one={undo} removed />
          </Notice>
        )}
        {forStaff && <p className="reading">{showingWords(exercise.referencesShown)}</p>}
        {demonstrations.length === 0 ? (
          <EmptyState title={forStaff ? 'None recorded yet' : 'None to look at yet'}>
            {forStaff
              ? 'Open a line under References on the bench; “Record a demonstration” is below the line there.'
              : 'No demonstration has been shown so far.'}
          </EmptyState>
        ) : (
          <ol className="specimen-list" role="list">
            {demonstrations.map((one) => (
              <DemonstrationCard
                key={one.id}
                exerciseId={exerciseId}
                one={one}
                forStaff={forStaff}
                timeZone={course.timeZone}
              />
            ))}
          </ol>
        )}
        {removed.some(({ id }) => id !== undo?.id) && (
          <Section title="Removed" lead="Only you see them; each can be restored.">
            <ul className="plain-list">
              {removed
                .filter(({ id }) => id !== undo?.id)
                .map((one) => (
                  <li key={one.id}>
                    “{one.title}”, on “{one.text}” <RemoveForm one={one} removed />
                  </li>
                ))}
            </ul>
          </Section>
        )}
      </Page>
    </>
  );
}

type DemonstrationCardProps = {
  exerciseId: string;
  one: DemonstrationView & { mayChange: boolean };
  forStaff: boolean;
  timeZone: string;
};

/** One demonstration: the line at its end, its author, and whether the course sees it. */
function DemonstrationCard({ exerciseId, one, forStaff, timeZone }: DemonstrationCardProps) {
  const { title, author, recorded, reasons, createdAt, shownAt } = one;
  return (
    <li>
      <SpecimenFigure
        {...one}
        spacing={one.last}
        caption={
          <>
            <Link href={`/exercises/${exerciseId}/demonstrations/${one.id}`}>{title}</Link>, on “{one.text}” by {author}
            : {counted(recorded.steps.length, 'step')}, {counted(reasons, 'reason')}
          </>
        }
      />
      {forStaff && (
        <div className="actions note-size">
          <span>
            <When at={createdAt} timeZone={timeZone} short /> ·{' '}
            {shownAt ? <strong>the course sees it</strong> : 'not shown'}
          </span>
          {one.mayChange && <ShowForm one={one} shown={shownAt !== null} />}
          {one.mayChange && <RemoveForm one={one} removed={false} />}
        </div>
      )}
    </li>
  );
}
