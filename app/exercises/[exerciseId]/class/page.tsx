import type { Metadata } from 'next';
import Link from 'next/link';
import { TakeSheet } from '@/app/_released/export-line';
import { ButtonLink } from '@/app/_ui/Button';
import { EqualSpacings } from '@/app/_ui/EqualSpacings';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { Tabs } from '@/app/_ui/Tabs';
import { getClass, getPairTotals } from '@/lib/class/class';
import { forPage } from '@/lib/http/page';
import { exportAddress } from '@/shared/schemas/export';
import { ClassLines } from './class-lines';
import { ClassSides } from './class-sides';
import { ClassStudents } from './class-students';

type Props = {
  params: Promise<{ exerciseId: string }>;
  searchParams: Promise<{ round?: string; page?: string; line?: string; sides?: string }>;
};

export const metadata: Metadata = { title: 'Class' };

/** The class in one round: what was sent, what the class has not yet learned to see, and the marks. */
export default async function ClassPage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { round, page, line, sides } = await searchParams;
  const shown = await forPage(getClass, { exerciseId, round: round ?? null, page: page ?? 1 });
  if (shown.round === null) return <ClassToCome {...shown} />;
  const opened = shown.summary.lines.find(({ specimenVersionId }) => specimenVersionId === line);
  const totals = opened
    ? await forPage(getPairTotals, { exerciseId, roundNumber: shown.round.number, line: opened.specimenVersionId })
    : null;
  const here = `/exercises/${exerciseId}/class`;
  const ofRound = (number: number) => `${here}?round=${number}`;
  const ofThisRound = { round: String(shown.round.number) };
  return (
    <Page width="wide">
      <PageHeader
        title="The class"
        trail={[
          { href: `/courses/${shown.course.id}`, label: shown.course.title },
          { href: `/exercises/${exerciseId}`, label: shown.exercise.title },
        ]}
        actions={
          <>
            <ButtonLink href={`/exercises/${exerciseId}/map?round=${shown.round.number}`}>
              Map of pairs and students
            </ButtonLink>
            <ButtonLink href={`/exercises/${exerciseId}/progress`}>From round to round</ButtonLink>
            <ButtonLink href={`/exercises/${exerciseId}/rounds/${shown.round.number}/critique`}>
              Critique of this round
            </ButtonLink>
            <ButtonLink href={`/exercises/${exerciseId}/rounds/${shown.round.number}/wall`}>
              Wall of this round
            </ButtonLink>
            {shown.mayExport && (
              <ButtonLink href={`/exercises/${exerciseId}/rounds/${shown.round.number}/release`}>
                Release this round
              </ButtonLink>
            )}
          </>
        }
      />
      {shown.rounds.length > 1 && (
        <Tabs
          label="Rounds"
          current={ofRound(shown.round.number)}
          tabs={shown.rounds.map(({ number, title }) => ({
            href: ofRound(number),
            label: `Round ${number}${title && `, ${title}`}`,
          }))}
        />
      )}
      {shown.students.some(({ hidden, sent }) => hidden && sent > 0) && (
        <Notice>
          Names are hidden in this exercise until every proof that was sent has been released. Until then, you see who
          has sent and who hasn’t; counts, dates and marks appear after that.
        </Notice>
      )}
      <ClassSides
        sides={shown.summary.sides}
        drawnAt={`${ofRound(shown.round.number)}&sides=drawn`}
        drawn={sides === 'drawn'}
      />
      <ClassLines
        summary={shown.summary}
        here={here}
        round={shown.round.number}
        opened={opened?.specimenVersionId}
        totals={totals}
      />
      <ClassStudents shown={shown} here={here} />
      <EqualSpacings groups={shown.identical} />
      <Section title="Print and export" id="out">
        <div className="actions">
          {shown.mayExport && (
            <ButtonLink plainLink small href={exportAddress('marks', exerciseId, ofThisRound)}>
              Marks as CSV
            </ButtonLink>
          )}
          {shown.mayExport && (
            <ButtonLink plainLink small href={exportAddress('oneroster', exerciseId, ofThisRound)}>
              Export released marks (OneRoster 1.2)
            </ButtonLink>
          )}
          <ButtonLink plainLink small href={exportAddress('class', exerciseId, ofThisRound)}>
            Pairs as CSV
          </ButtonLink>
        </div>
        <TakeSheet
          action={exportAddress('class-set', exerciseId)}
          fields={ofThisRound}
          summary="All released sheets of this round in one file"
          button="Class set as PDF"
        />
        <p className="note-size">
          <a href={exportAddress('notes', exerciseId, ofThisRound)} download>
            All notes of this round as W3C Web Annotations (JSON-LD)
          </a>
          , released or not, for other programs to read.
        </p>
      </Section>
      <p className="quiet note-size">
        Student work and marks are education records. Show as little of this page as the moment needs, and follow the
        school’s policy and local law. <Link href="/records">Records and privacy</Link>
      </p>
    </Page>
  );
}

/** Before the first round of an exercise is planned there is no class work to show. */
function ClassToCome({ course, exercise }: { course: Entry; exercise: Entry }) {
  return (
    <Page>
      <PageHeader
        title="The class"
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
        ]}
      />
      <EmptyState title="No round yet">The work of the class appears here once this exercise has a round.</EmptyState>
    </Page>
  );
}

type Entry = { id: string; title: string };
