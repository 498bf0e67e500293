import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { Page, PageHeader, Section } from '@/app/_ui/Page';
import { Tabs } from '@/app/_ui/Tabs';
import { getMapPage } from '@/lib/class/map';
import { forPage } from '@/lib/http/page';
import { exportAddress } from '@/shared/schemas/export';
import { Map } from './map';
import { MapTable } from './map-table';
import styles from './map.module.css';

type Props = {
  params: Promise<{ exerciseId: string }>;
  searchParams: Promise<{ round?: string; line?: string; as?: string; page?: string }>;
};

export const metadata: Metadata = { title: 'Map of the class' };

/** Pairs across, students down: shows at a glance where a class is off; the same numbers as a table for reading. */
export default async function MapPage({ params, searchParams }: Props) {
  const { exerciseId } = await params;
  const { round, line, as, page } = await searchParams;
  const shown = await forPage(getMapPage, {
    exerciseId,
    round: round ?? null,
    line: line ?? null,
    tablePage: as === 'table' ? (page ?? 1) : null,
  });
  const here = (to: { round?: number; line?: string | null; as?: string }) => {
    const query = new URLSearchParams({ round: String(to.round ?? shown.round) });
    if (to.line) query.set('line', to.line);
    if (to.as) query.set('as', to.as);
    return `/exercises/${exerciseId}/map?${query}`;
  };
  return (
    <Page width="wide">
      <PageHeader
        title="Map of the class"
        trail={[
          { href: `/courses/${shown.course.id}`, label: shown.course.title },
          { href: `/exercises/${exerciseId}`, label: shown.exercise.title },
          { href: `/exercises/${exerciseId}/class?round=${shown.round}`, label: 'Class' },
        ]}
        lead={`Round ${shown.round}: every pair, every student, and how far each is from ${shown.compared ? 'the nearest reference' : 'the usual range, since there is no reference yet'}.`}
        actions={
          shown.line && (
            <>
              {shown.line !== 'all' &&
                (shown.table ? (
                  <ButtonLink href={here({ line: shown.line })}>As a map</ButtonLink>
                ) : (
                  <ButtonLink href={here({ line: shown.line, as: 'table' })}>As a table</ButtonLink>
                ))}
              <ButtonLink
                plainLink
                href={exportAddress('map', exerciseId, {
                  round: String(shown.round),
                  ...(shown.line === 'all' ? {} : { line: shown.line }),
                })}
              >
                CSV
              </ButtonLink>
            </>
          )
        }
      />
      {shown.rounds.length > 1 && (
        <Tabs
          label="Rounds"
          current={here({})}
          tabs={shown.rounds.map(({ number, title }) => ({
            href: here({ round: number }),
            label: `Round ${number}${title && `, ${title}`}`,
          }))}
        />
      )}
      {shown.line === null ? (
        <Section title="Nothing yet">
          <p>The map appears as soon as proofs of this round arrive.</p>
        </Section>
      ) : (
        <Section title="Lines">
          <nav aria-label="Lines">
            <ul className={styles.lines}>
              {[...shown.lines, ...(shown.lines.length > 1 ? [{ id: 'all', text: 'All lines side by side' }] : [])].map(
                ({ id, text }) => (
                  <li key={id}>
                    {id === shown.line ? (
                      <strong aria-current="page">{text}</strong>
                    ) : (
                      <Link href={here({ line: id })} prefetch={false}>
                        {text}
                      </Link>
                    )}
                  </li>
                ),
              )}
            </ul>
          </nav>
          {shown.table ? (
            <MapTable
              table={shown.table}
              address={(number) => `${here({ line: shown.line, as: 'table' })}&page=${number}`}
            />
          ) : (
            <Map
              key={`${shown.round} ${shown.line}`}
              address={`/api/class/map/${exerciseId}?round=${shown.round}${shown.line === 'all' ? '' : `&line=${shown.line}`}`}
            />
          )}
        </Section>
      )}
      <p className="quiet note-size">
        Student work is an education record: close this page when the talk is over.{' '}
        <Link href="/records">Records and privacy</Link>
      </p>
    </Page>
  );
}
