import type { Metadata } from 'next';
import Link from 'next/link';
import { TakeSheet } from '@/app/_released/export-line';
import { ButtonLink } from '@/app/_ui/Button';
import { EqualSpacings } from '@/app/_ui/EqualSpacings';
import { Menu } from '@/app/_ui/Disclosure';
import { EmptyState, Notice, Page, PageHeader } from '@/app/_ui/Page';
import { Tabs } from '@/app/_ui/Tabs';
import { getClass, getPairTotals } from '@/lib/class/class';
import { forPage } from '@/lib/http/page';
import { exportAddress } from '@/shared/schemas/export';
import { StaffFrame } from '../staff-frame';
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
  const roundPath = `/exercises/${exerciseId}/rounds/${shown.round.number}`;
  return (
    <>
      <StaffFrame exercise={shown.exercise} current="class" mayPlan={shown.mayExport} />
      <Page width="wide">
        <PageHeader
          title="The class"
          trail={[{ href: `/courses/${shown.course.id}`, label: shown.course.title }]}
          actions={
            <>
              <ButtonLink href={`${roundPath}/critique`}>Critique</ButtonLink>
              {shown.mayExport && <ButtonLink href={`${roundPath}/release`}>Release</ButtonLink>}
              <ButtonLink href={`${roundPath}/wall`}>Wall</ButtonLink>
              <ButtonLink href={`/exercises/${exerciseId}/map?round=${shown.round.number}`}>Map</ButtonLink>
              <ButtonLink href={`/exercises/${exerciseId}/progress`}>From round to round</ButtonLink>
              <ClassExports exerciseId={exerciseId} round={shown.round.number} marks={shown.mayExport} />
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
        <ClassSides
          sides={shown.summary.sides}
          lines={shown.summary.lines}
          sheets={shown.sheets}
          drawnAt={`${ofRound(shown.round.number)}&sides=drawn`}
          drawn={sides === 'drawn'}
        />
        <ClassLines
          summary={shown.summary}
          sheets={shown.sheets}
          here={here}
          round={shown.round.number}
          opened={opened?.specimenVersionId}
          totals={totals}
        />
        {shown.students.some(({ hidden, sent }) => hidden && sent > 0) && (
          <Notice>
            Names are hidden in this exercise until every proof that was sent has been released. Until then, you see who
            has sent and who hasn’t; counts, dates and marks appear after that.
          </Notice>
        )}
        <ClassStudents shown={shown} here={here} />
        <EqualSpacings groups={shown.identical} />
        <p className="quiet note-size">
          Student work and marks are education records. Show as little of this page as the moment needs, and follow the
          school’s policy and local law. <Link href="/records">Records and privacy</Link>
        </p>
      </Page>
    </>
  );
}

type ExportsProps = { exerciseId: string; round: number; marks: boolean };

/** What leaves this page as a file or on paper. Only who leads the course may export marks. */
function ClassExports({ exerciseId, round, marks }: ExportsProps) {
  const ofRound = { round: String(round) };
  return (
    <Menu label="Export">
      {marks && (
        <a href={exportAddress('marks', exerciseId, ofRound)} download>
          Marks as CSV
        </a>
      )}
      {marks && (
        <a href={exportAddress('oneroster', exerciseId, ofRound)} download>
          Released marks (OneRoster 1.2)
        </a>
      )}
      <a href={exportAddress('class', exerciseId, ofRound)} download>
        Pairs as CSV
      </a>
      <a href={exportAddress('notes', exerciseId, ofRound)} download>
        All notes, released or not (W3C Web Annotations)
      </a>
      <TakeSheet
        action={exportAddress('class-set', exerciseId)}
        fields={ofRound}
        summary="All released sheets on paper"
        button="Class set as PDF"
      />
    </Menu>
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
