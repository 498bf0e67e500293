import type { Metadata } from 'next';
import Link from 'next/link';
import { secondMarkingWords } from '@/app/exercises/[exerciseId]/plan/setting-words';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Notice, Page, PageHeader } from '@/app/_ui/Page';
import { Form, SubmitButton } from '@/app/_ui/Form';
import { Pages } from '@/app/_ui/Pages';
import { Progress, Status } from '@/app/_ui/Status';
import { Table } from '@/app/_ui/Table';
import { getSecondQueue } from '@/lib/review/second-marker';
import { forPage } from '@/lib/http/page';
import { counted } from '@/shared/text/number';
import { takeUpSecondAction } from '../actions';

type Props = { params: Promise<{ exerciseId: string; number: string }>; searchParams: Promise<{ page?: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Second marking of round ${(await params).number}` };
}

/** The proofs of a round that get a second marker. */
export default async function SecondMarkingPage({ params, searchParams }: Props) {
  const { exerciseId, number } = await params;
  const { page } = await searchParams;
  const shown = await forPage(getSecondQueue, { exerciseId, roundNumber: number, page: page ?? 1 });
  const { course, exercise, round, firstLine } = shown;
  const here = `/exercises/${exercise.id}/rounds/${round.number}`;
  return (
    <Page width="wide">
      <PageHeader
        title={`Second marking of round ${round.number}`}
        kicker={round.title || undefined}
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          { href: `${here}/critique`, label: `Critique of round ${round.number}` },
        ]}
        lead={
          shown.count > 0 ? (
            <Progress done={shown.done} of={shown.count} what="second marking" verb="finished" />
          ) : undefined
        }
        actions={
          <>
            {shown.next && firstLine && (
              <ButtonLink kind="main" href={`/critique/${shown.next}/${firstLine}`}>
                Start the next second marking
              </ButtonLink>
            )}
            <ButtonLink href={`${here}/agreement`}>Agreement of the two</ButtonLink>
            {shown.mayPlan && (
              <ButtonLink href={`/exercises/${exercise.id}/plan/rounds/${round.id}#second-marking`}>
                Set which proofs
              </ButtonLink>
            )}
          </>
        }
      />
      <p>{secondMarkingWords(shown.setting)}</p>
      <Notice>
        The two mark independently: neither sees the other’s marks or notes until both have finished, and the same
        person never marks a proof twice. A proof may have another name here than in the first queue.
      </Notice>
      {shown.rows.length === 0 ? (
        <EmptyState title="No second marking">
          {shown.setting.which === 'none'
            ? 'The instructor has not asked for a second marker in this round.'
            : 'No proof that counts is among those that a second marker looks at.'}
        </EmptyState>
      ) : (
        <>
          <Table
            caption={`${counted(shown.count, 'proof')} for a second marker, in an order of their own${shown.rows.some(({ skipped }) => skipped) ? '; what you skipped comes last' : ''}${shown.pages > 1 ? `; page ${shown.page} of ${shown.pages}` : ''}`}
          >
            <thead>
              <tr>
                <th scope="col">Student</th>
                <th scope="col">Second marking</th>
                <th scope="col">For you</th>
              </tr>
            </thead>
            <tbody>
              {shown.rows.map(({ token, shownAs, state, status, skipped, heldBy }) => (
                <tr key={token}>
                  <th scope="row">
                    {firstLine && (status === 'free' || status === 'mine') ? (
                      <Link href={`/critique/${token}/${firstLine}`}>{shownAs}</Link>
                    ) : (
                      shownAs
                    )}
                  </th>
                  <td>
                    <Status
                      kind={state === 'done' ? 'done' : status === 'mine' || status === 'held' ? 'going' : 'waiting'}
                    >
                      {state === 'done' ? 'finished' : status === 'mine' || status === 'held' ? 'begun' : 'waits'}
                    </Status>
                  </td>
                  <td>
                    {statusWords[status]}
                    {heldBy && ` ${heldBy}`}
                    {skipped && state === 'open' && (
                      <Form action={takeUpSecondAction} label={`Resume ${shownAs}`}>
                        <input type="hidden" name="proof" value={token} />
                        Skipped by you.{' '}
                        <SubmitButton kind="text" small>
                          Resume
                        </SubmitButton>
                      </Form>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </Table>
          <Pages
            label="Pages of second markings"
            page={shown.page}
            pages={shown.pages}
            href={(to) => `${here}/second?page=${to}`}
          />
        </>
      )}
    </Page>
  );
}

const statusWords = {
  free: 'may be taken',
  mine: 'yours',
  held: 'with',
  own: 'you have a part in the first marking',
} as const;
