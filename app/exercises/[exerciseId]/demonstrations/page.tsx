import type { Metadata } from 'next';
import { EmptyState } from '@/app/_ui/EmptyState';
import { Notice } from '@/app/_ui/Notice';
import { Page } from '@/app/_ui/Page';
import { PageHeader } from '@/app/_ui/PageHeader';
import { Section } from '@/app/_ui/Section';
import { listDemonstrations } from '@/lib/demonstration/list-demonstrations';
import { forPage } from '@/lib/http/page';
import { StaffFrame } from '../staff-frame';
import { DemonstrationCard } from './demonstration-card';
import { RemoveForm, showingWords } from './show-form';

export const metadata: Metadata = { title: 'Demonstrations' };

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<{ removed?: string }> };

/** Settings that were recorded as they were made: for staff all of them, for students those that are shown. */
export default async function Demonstrations({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { exercise, course, role, demonstrations, removed } = await forPage(listDemonstrations, { exerciseId });
  const teaches = role !== 'student';
  const last = (await searchParams).removed;
  const undo = removed.find(({ id }) => id === last);
  return (
    <>
      {teaches && <StaffFrame exercise={exercise} current="demonstrations" mayPlan={role === 'instructor'} />}
      <Page width="wide">
        <PageHeader
          title="Demonstrations"
          trail={[
            { href: `/courses/${course.id}`, label: course.title },
            ...(teaches ? [] : [{ href: `/exercises/${exerciseId}`, label: exercise.title }]),
          ]}
          lead={
            teaches
              ? 'A line as it was set, step by step, with reasons.'
              : 'How a teacher set a line, step by step, with reasons. Other settings can be right as well.'
          }
        />
        {undo && (
          <Notice live="polite">
            <p>“{undo.title}” is removed.</p>
            <RemoveForm one={undo} removed />
          </Notice>
        )}
        {teaches && <p className="reading">{showingWords(exercise.referencesShown)}</p>}
        {demonstrations.length === 0 ? (
          <EmptyState title={teaches ? 'None recorded yet' : 'None to look at yet'}>
            {teaches
              ? 'Open a line under References on the bench; “Record a demonstration” stands below the line there.'
              : 'Your teachers have shown no demonstration so far.'}
          </EmptyState>
        ) : (
          <ol className="specimen-list" role="list">
            {demonstrations.map((one) => (
              <DemonstrationCard
                key={one.id}
                exerciseId={exerciseId}
                one={one}
                teaches={teaches}
                timeZone={course.timeZone}
              />
            ))}
          </ol>
        )}
        {removed.some(({ id }) => id !== undo?.id) && (
          <Section title="Removed" lead="Nobody else sees them; each can be put back.">
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
