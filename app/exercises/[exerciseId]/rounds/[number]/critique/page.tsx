import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Pages } from '@/app/_ui/Pages';
import { Progress, Status, When } from '@/app/_ui/Status';
import { Table } from '@/app/_ui/Table';
import { Tabs } from '@/app/_ui/Tabs';
import { getQueue } from '@/lib/review/queue';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';
import { beginMarkingAction, takeNextAction, takeUpAction } from '../actions';

type Props = {
  params: Promise<{ exerciseId: string; number: string }>;
  searchParams: Promise<{ none?: string; section?: string; by?: string; page?: string }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Critique of round ${(await params).number}` };
}

/** The queue of a round, by student or by line. */
export default async function QueuePage({ params, searchParams }: Props) {
  const { exerciseId, number } = await params;
  const { by, page, section: sectionId, none } = await searchParams;
  const queue = await forPage(getQueue, {
    exerciseId,
    roundNumber: number,
    page: page ?? 1,
    section: sectionId ?? null,
  });
  const bySpecimen = by === 'specimen';
  const here = `/exercises/${exerciseId}/rounds/${number}/critique`;
  const ofSection = (id: string) => `${here}?section=${id}`;
  const { course, exercise, round, specimens, section } = queue;
  const firstLine = specimens[0];
  return (
    <Page width="wide">
      <PageHeader
        title={`Critique of round ${round.number}`}
        kicker={round.title || undefined}
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
        ]}
        lead={
          queue.count > 0 ? (
            <>
              {section && `${section.name}: `}
              <Progress done={queue.done} of={queue.count} what="proof" verb="marked" />
            </>
          ) : undefined
        }
        actions={
          <>
            {queue.done < queue.count && firstLine && (
              <Form action={takeNextAction} label="Mark the next proof">
                <RoundFields exerciseId={exercise.id} number={round.number} section={section?.id} />
                <SubmitButton pending="Taking…">Mark the next proof</SubmitButton>
              </Form>
            )}
            {queue.mayRelease && (
              <ButtonLink href={`/exercises/${exercise.id}/rounds/${round.number}/release`}>
                Release this round
              </ButtonLink>
            )}
            {queue.secondMarking !== 'none' && (
              <ButtonLink href={`/exercises/${exercise.id}/rounds/${round.number}/second`}>Second marking</ButtonLink>
            )}
            <ButtonLink href={`/exercises/${exercise.id}/class`}>Class page</ButtonLink>
          </>
        }
      />
      {queue.namesHidden && (
        <Notice>
          Names are hidden until every proof sent in this exercise has been released. Until then each student has one
          alias, in every round and for every marker. An instructor can show the names on the exercise’s plan, which is
          logged.
        </Notice>
      )}
      {round.sections.length > 0 && <BeginBySection queue={queue} />}
      {round.markingStartedAt === null ? (
        <Form action={beginMarkingAction} label="Begin marking">
          <RoundFields exerciseId={exercise.id} number={round.number} section={undefined} />
          <input type="hidden" name="version" value={round.version} />
          <p>
            Marking has not begun: until the round is due, another proof replaces the one below, and notes on unchanged
            gaps go along. Once it is due, your first note or mark fixes a student’s proof. Once you begin, each
            student’s latest proof is fixed; later ones don’t count.
          </p>
          <div className="actions">
            <SubmitButton kind="usual" pending="Beginning…">
              {round.sections.length > 0 ? 'Begin marking everyone else' : 'Begin marking'}
            </SubmitButton>
          </div>
        </Form>
      ) : (
        <p>
          Marking began {round.sections.length > 0 && 'for everyone else '}
          <When at={round.markingStartedAt} timeZone={course.timeZone} />. Proofs sent after that do not count unless
          the instructor picks them.
        </p>
      )}
      {(queue.count === 0 && queue.uncountedCount === 0) || !firstLine ? (
        <EmptyState title="No proofs yet">
          No one has sent a proof of round {round.number}. Proofs appear here as they arrive; meanwhile you can set
          references.
        </EmptyState>
      ) : (
        <>
          {none !== undefined && (
            <Notice kind="warning" live="polite">
              Nothing waits{section && ` in ${section.name}`}: other markers are working on the rest.
            </Notice>
          )}
          {queue.sections.length > 0 && (
            <Tabs
              label="Sections"
              current={section ? ofSection(section.id) : here}
              tabs={[
                { href: here, label: 'All sections' },
                ...queue.sections.map(({ id, name, sent }) => ({ href: ofSection(id), label: name, count: sent })),
              ]}
            />
          )}
          <Tabs
            label="Order"
            current={bySpecimen ? `${here}?by=specimen` : here}
            tabs={[
              { href: here, label: 'By student' },
              { href: `${here}?by=specimen`, label: 'By line' },
            ]}
          />
          {queue.uncounted.length > 0 && (
            <ul>
              {queue.uncountedCount > queue.uncounted.length && (
                <li>
                  {counted(queue.uncountedCount, 'student')} have no proof that counts; the first{' '}
                  {queue.uncounted.length} are listed.
                </li>
              )}
              {queue.uncounted.map(({ shownAs, later }) => (
                <li key={later[0]!.token}>
                  {shownAs} has no proof that counts. <LaterProofs later={later} line={firstLine.id} />
                </li>
              ))}
            </ul>
          )}
          {bySpecimen ? (
            <BySpecimen
              specimens={specimens}
              round={`/exercises/${exercise.id}/rounds/${round.number}`}
              students={queue.count}
            />
          ) : (
            <ByStudent queue={queue} line={firstLine.id} here={here} />
          )}
        </>
      )}
    </Page>
  );
}

/** Sections with their own dates: for each, when it is due, and the beginning of marking. */
function BeginBySection({ queue: { round, exercise, course } }: { queue: Queue }) {
  return (
    <Section
      title="Sections with their own dates"
      lead="Marking begins for each of them separately. From then on, later proofs from that section don’t count."
    >
      <ul className="card-list">
        {round.sections.map(({ id, name, dueAt, markingStartedAt, version }) => (
          <li key={id}>
            <p>
              {name}
              {dueAt && (
                <>
                  , due <When at={dueAt} timeZone={course.timeZone} short />
                </>
              )}
              {markingStartedAt && (
                <>
                  : marking began <When at={markingStartedAt} timeZone={course.timeZone} short />
                </>
              )}
              .
            </p>
            {markingStartedAt === null && (
              <Form action={beginMarkingAction} label={`Begin marking ${name}`}>
                <RoundFields exerciseId={exercise.id} number={round.number} section={id} />
                <input type="hidden" name="version" value={version} />
                <div className="actions">
                  <SubmitButton kind="usual" small pending="Beginning…">
                    Begin marking {name}
                  </SubmitButton>
                </div>
              </Form>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}

type Queue = Awaited<ReturnType<typeof getQueue>>;

function BySpecimen({
  specimens,
  round,
  students,
}: {
  specimens: Queue['specimens'];
  round: string;
  students: number;
}) {
  return (
    <Section
      title="Line by line, across the class"
      lead={`Every student’s spacing of each line, one below the other; those that share a fault are grouped, and one remark can go to all of them. ${counted(students, 'proof')} in the queue.`}
    >
      <ol>
        {specimens.map(({ id, text }) => (
          <li key={id}>
            <Link href={`${round}/specimens/${id}`} prefetch={false}>
              {text}
            </Link>
          </li>
        ))}
      </ol>
    </Section>
  );
}

/** Which round, and which part of its queue. */
function RoundFields({
  exerciseId,
  number,
  section,
}: {
  exerciseId: string;
  number: number;
  section: string | undefined;
}) {
  return (
    <>
      <input type="hidden" name="exerciseId" value={exerciseId} />
      <input type="hidden" name="roundNumber" value={number} />
      <input type="hidden" name="section" value={section ?? ''} />
    </>
  );
}

/** Proofs that arrived after marking began, each with a link; on its page the instructor can let one count. */
function LaterProofs({ later, line }: { later: Queue['queue'][number]['later']; line: string }) {
  if (later.length === 0) return null;
  return (
    <>
      Sent later, doesn’t count:{' '}
      {later.map(({ token, number }) => (
        <Link key={token} href={`/critique/${token}/${line}`}>
          proof {number}
        </Link>
      ))}
    </>
  );
}

function ByStudent({ queue, line, here }: { queue: Queue; line: string; here: string }) {
  const suffix = queue.section ? `?section=${queue.section.id}` : '';
  return (
    <>
      <Table
        caption={`${counted(queue.count, 'proof')} that count${queue.count === 1 ? 's' : ''}, in a fixed, shuffled order, the same for every marker${queue.queue.some(({ skipped }) => skipped) ? '; what you skipped comes last' : ''}${queue.pages > 1 ? `; page ${queue.page} of ${queue.pages}` : ''}`}
      >
        <thead>
          <tr>
            <th scope="col">Student</th>
            <th scope="col">Section</th>
            <th scope="col">Marks</th>
            <th scope="col">Marker</th>
            <th scope="col">Remark</th>
          </tr>
        </thead>
        <tbody>
          {queue.queue.map((entry) => (
            <tr key={entry.token}>
              <th scope="row">
                <Link href={`/critique/${entry.token}/${line}${suffix}`} prefetch={false}>
                  {entry.shownAs}
                </Link>
              </th>
              <td>{entry.section ?? '–'}</td>
              <td>
                <Status kind={entry.state === 'done' ? 'done' : entry.mine ? 'going' : 'waiting'}>
                  {entry.state === 'done' ? 'marked' : entry.mine ? 'begun by you' : 'waits'}
                </Status>
              </td>
              <td>
                {entry.heldBy && entry.heldUntil ? (
                  <>
                    {entry.mine ? 'you' : entry.heldBy}, kept until{' '}
                    <When at={entry.heldUntil} timeZone={queue.course.timeZone} short />
                  </>
                ) : (
                  '–'
                )}
              </td>
              <td>
                {entry.skipped && (
                  <Form action={takeUpAction} label={`Resume ${entry.shownAs}`}>
                    <input type="hidden" name="proof" value={entry.token} />
                    Skipped by you.{' '}
                    <SubmitButton kind="text" small>
                      Resume
                    </SubmitButton>
                  </Form>
                )}
                {entry.lookAgain && 'Sent again after it was marked: look again. '}
                <LaterProofs later={entry.later} line={line} />
              </td>
            </tr>
          ))}
        </tbody>
      </Table>
      <Pages
        label="Pages of the queue"
        page={queue.page}
        pages={queue.pages}
        href={(to) => `${here}?${queue.section ? `section=${queue.section.id}&` : ''}page=${to}`}
      />
    </>
  );
}
