import type { Metadata } from 'next';
import Link from 'next/link';
import { TakeSheet } from '@/app/_released/export-line';
import { ReleasedView } from '@/app/_released/released-view';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Notice, Page, PageHeader, Section } from '@/app/_ui/Page';
import { Pages } from '@/app/_ui/Pages';
import { Tabs } from '@/app/_ui/Tabs';
import { forPage } from '@/lib/http/page';
import { previewRelease } from '@/lib/release/release';
import { getReleasePlan } from '@/lib/release/plan';
import { exportAddress } from '@/shared/schemas/export';
import { counted } from '@/shared/text/number';
import { PlanForm } from './plan-form';

type Props = {
  params: Promise<{ exerciseId: string; number: string }>;
  searchParams: Promise<{ preview?: string; page?: string; section?: string; released?: string; corrected?: string }>;
};

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Release of round ${(await params).number}` };
}

/**
 * The plan of a release: who would get what, a preview of exactly what one student will see, and the release itself.
 */
export default async function ReleasePage({ params, searchParams }: Props) {
  const { exerciseId, number } = await params;
  const { preview, page, section, released, corrected } = await searchParams;
  const round = { exerciseId, roundNumber: number };
  const plan = await forPage(getReleasePlan, { ...round, page: page ?? 1, section: section ?? null });
  const shown = preview ? await forPage(previewRelease, { ...round, proof: preview }) : null;
  const all = `/exercises/${exerciseId}/rounds/${number}/release`;
  const ofSection = (id: string) => `${all}?section=${id}`;
  const here = plan.section ? ofSection(plan.section.id) : all;
  const more = plan.section ? `${here}&` : `${here}?`;
  const waiting = plan.rows.filter((row) => row.released === null).length;
  return (
    <Page width="wide">
      <PageHeader
        title={`Release round ${plan.round.number}`}
        trail={[
          { href: `/courses/${plan.course.id}`, label: plan.course.title },
          { href: `/exercises/${plan.exercise.id}`, label: plan.exercise.title },
        ]}
        lead="Notes and marks go out together, and never change after. A later release to the same student is a correction with the next number."
        actions={
          <>
            <ButtonLink href={`/exercises/${exerciseId}/rounds/${number}/critique`}>Back to the queue</ButtonLink>
            <ButtonLink href={`/exercises/${exerciseId}/class`}>Class page</ButtonLink>
          </>
        }
      />
      {released && (
        <Notice
          live="polite"
          title="Released"
        >{`Notes and marks went out to ${counted(Number(released), 'student')}${Number(corrected) > 0 ? `, ${corrected} of them as a correction` : ''}.`}</Notice>
      )}
      {!plan.round.begun && (
        <Notice kind="warning">
          Marking has not begun in this round. A student who sends another proof still replaces the one that would be
          released.
        </Notice>
      )}
      <UnsettledNotice rows={plan.rows} agreement={`/exercises/${exerciseId}/rounds/${number}/agreement`} />
      {plan.referencesShown === 'never' ? (
        <p>This exercise never shows references to students: what goes out has notes and marks, and no deviations.</p>
      ) : (
        <p>With the release, students see the deviations from the nearest reference, as the exercise allows.</p>
      )}
      {plan.sections.length > 0 && (
        <Tabs
          label="Sections"
          current={here}
          tabs={[
            { href: all, label: 'All sections' },
            ...plan.sections.map(({ id, name, sent }) => ({ href: ofSection(id), label: name, count: sent })),
          ]}
        />
      )}
      {plan.rows.length === 0 ? (
        <EmptyState title="Nothing to release">No one has sent a proof that counts in this round.</EmptyState>
      ) : (
        <Section title={waiting === 0 ? 'Everyone has a release' : `${counted(waiting, 'student')} without a release`}>
          <PlanForm plan={plan} more={more} exerciseId={exerciseId} roundNumber={plan.round.number} />
        </Section>
      )}
      <Pages label="Pages of the plan" page={plan.page} pages={plan.pages} href={(to) => `${more}page=${to}`} />
      {shown && (
        <Section id="preview" title={<>What {shown.shownAs} will see</>} lead="Exactly this, and nothing besides.">
          {shown.unsure.length > 0 && (
            <Notice kind="warning" title="Not settled">
              <ul>
                {shown.unsure.map(({ title, level, from }) => (
                  <li key={title}>
                    {title}:{' '}
                    {from === 'differs'
                      ? 'the two markers differ and it isn’t settled'
                      : 'the second marker has not finished'}
                    . The first marker’s level would count{level === null ? ', and there is none yet' : `: ${level}`}.
                  </li>
                ))}
              </ul>
            </Notice>
          )}
          <TakeSheet
            action={exportAddress('sheet-previews', exerciseId)}
            fields={{ round: number, proof: preview ?? '' }}
            summary="This preview on paper"
            button="Preview as PDF"
          />
          <ReleasedView snapshot={shown.snapshot} drawn={shown.drawn} />
        </Section>
      )}
    </Page>
  );
}

type Rows = Awaited<ReturnType<typeof getReleasePlan>>['rows'];

/** A warning where a level would be released that only one of two markers gave; it names the level. */
function UnsettledNotice({ rows, agreement }: { rows: Rows; agreement: string }) {
  const differing = rows.filter((row) => row.differing > 0).length;
  const waiting = rows.filter((row) => row.secondWaits).length;
  if (differing + waiting === 0) return null;
  return (
    <Notice kind="warning" title="Two markers">
      {differing > 0 && (
        <p>
          {counted(differing, 'proof')} on this page: the two markers differ and it isn’t settled. In a release the
          first marker’s level would count. <Link href={agreement}>Settle them first</Link>, or tick them knowingly.
        </p>
      )}
      {waiting > 0 && (
        <p>
          {counted(waiting, 'proof')} on this page: the second marker has not finished. In a release the first marker’s
          level would count.
        </p>
      )}
    </Notice>
  );
}
