import type { Metadata } from 'next';
import Link from 'next/link';
import { ButtonLink } from '@/app/_ui/Button';
import { Disclosure } from '@/app/_ui/Disclosure';
import { EmptyState, Notice, Page, PageHeader } from '@/app/_ui/Page';
import { EqualSpacings } from '@/app/_ui/EqualSpacings';
import { Pages } from '@/app/_ui/Pages';
import { Across } from '@/app/critique/_desk/across';
import style from '@/app/critique/_desk/desk.module.css';
import { getSpecimenAcross, type ShownSpecimen } from '@/lib/review/across';
import { forPage } from '@/lib/http/page';
import { faultWords } from '@/shared/critique/faults';
import { counted } from '@/shared/text/number';

type Props = {
  params: Promise<{ exerciseId: string; number: string; specimenId: string }>;
  searchParams: Promise<{ fault?: string; page?: string }>;
};

export const metadata: Metadata = { title: 'One line across the class' };

/** One line of a round as the whole class set it, below each other. */
export default async function SpecimenPage({ params, searchParams }: Props) {
  const { exerciseId, number, specimenId } = await params;
  const { fault, page } = await searchParams;
  const shown = await forPage(getSpecimenAcross, {
    exerciseId,
    roundNumber: number,
    specimenId,
    fault: fault ?? null,
    page: page ?? 1,
  });
  const { course, exercise, round, specimen, chosen } = shown;
  const go = addressesOf(shown);
  return (
    <Page width="full">
      <PageHeader
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          {
            href: `/exercises/${exercise.id}/rounds/${round.number}/critique?by=specimen`,
            label: `Critique of round ${round.number}`,
          },
        ]}
        kicker={`One line across the class, ${counted(shown.count, 'spacing')}`}
        title={specimen.text}
      />
      <ul className={style.lines} aria-label="Lines of this exercise">
        {shown.specimens.map(({ id, text }) => (
          <li key={id}>
            <Link href={go.line(id)} prefetch={false} aria-current={id === specimen.id ? 'page' : undefined}>
              {text}
            </Link>
          </li>
        ))}
      </ul>
      {shown.namesHidden && (
        <Notice>Names are hidden until a proof is released: each spacing has an alias here.</Notice>
      )}
      {shown.count === 0 ? (
        <EmptyState
          title="No spacings yet"
          action={
            <ButtonLink href={`/exercises/${exercise.id}/rounds/${round.number}/critique`}>To the queue</ButtonLink>
          }
        >
          No one has sent a proof of round {round.number} with this line. Proofs appear here as they arrive.
        </EmptyState>
      ) : (
        <>
          <Disclosure
            summary={`Gathered by the measure: ${counted(shown.faults.length, 'fault')} that several spacings share`}
            open={chosen !== null}
          >
            <ul className={style.gathered}>
              {shown.faults.map((one) => (
                <li key={one.key}>
                  <Link
                    href={go.fault(one.key)}
                    prefetch={false}
                    aria-current={one.key === chosen?.key ? 'true' : undefined}
                  >
                    <strong>{one.letters}</strong> {placeWords(one)}, {faultWords[one.fault]}
                  </Link>{' '}
                  <span className="quiet">
                    {one.count} of {shown.count}
                  </span>
                </li>
              ))}
            </ul>
            {chosen && (
              <p>
                <Link href={go.line(specimen.id)} prefetch={false}>
                  All spacings
                </Link>
              </p>
            )}
          </Disclosure>
          {chosen && (
            <h2>
              {chosen.letters} {placeWords(chosen)}, {faultWords[chosen.fault]}: {counted(shown.inList, 'spacing')}
            </h2>
          )}
          <Across
            key={`${specimen.id} ${chosen?.key} ${shown.page}`}
            page={{
              personKey: shown.personKey,
              exerciseId: exercise.id,
              round: round.number,
              specimen,
              versions: shown.versions,
              lines: shown.lines,
              inList: shown.inList,
              first: shown.first,
              chosen,
              stock: shown.stock,
              go: go.keys,
            }}
          />
          <Pages label="Pages of spacings" page={shown.page} pages={shown.pages} href={(to) => go.ofPage(to)} />
          <EqualSpacings groups={shown.identical.map((members) => ({ members }))} />
        </>
      )}
    </Page>
  );
}

const placeWords = ({ first, last }: { first: number; last: number }) =>
  first === last ? `(pair ${first + 1})` : `(pairs ${first + 1} and ${last + 1})`;

/** Targets of links and keys on this page. */
function addressesOf({ exercise, round, specimen, specimens, faults, chosen, page, pages }: ShownSpecimen) {
  const line = (id: string) => `/exercises/${exercise.id}/rounds/${round.number}/specimens/${id}`;
  const fault = (key: string) => `${line(specimen.id)}?fault=${key}`;
  const ofPage = (wanted: number) => `${line(specimen.id)}?${chosen ? `fault=${chosen.key}&` : ''}page=${wanted}`;
  const place = specimens.findIndex(({ id }) => id === specimen.id);
  const lineAt = (index: number) => (specimens[index] ? line(specimens[index].id) : null);
  const nextFault = faults[(faults.findIndex(({ key }) => key === chosen?.key) + 1) % Math.max(1, faults.length)];
  return {
    line,
    fault,
    ofPage,
    keys: {
      nextFault: nextFault ? fault(nextFault.key) : null,
      nextPage: page < pages ? ofPage(page + 1) : null,
      previousPage: page > 1 ? ofPage(page - 1) : null,
      nextLine: lineAt(place + 1),
      previousLine: place > 0 ? lineAt(place - 1) : null,
    },
  };
}
