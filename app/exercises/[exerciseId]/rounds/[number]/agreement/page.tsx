import type { Metadata } from 'next';
import Link from 'next/link';
import { secondMarkingWords } from '@/app/exercises/[exerciseId]/plan/setting-words';
import { ButtonLink } from '@/app/_ui/Button';
import { EmptyState, Page, PageHeader, Section } from '@/app/_ui/Page';
import { Status } from '@/app/_ui/Status';
import { Table } from '@/app/_ui/Table';
import { getAgreement } from '@/lib/review/agreement';
import { forPage } from '@/lib/http/page';
import { fewestProofs } from '@/shared/marking/agreement';
import { exportAddress } from '@/shared/schemas/export';
import { counted, numberText, withUnit } from '@/shared/text/number';

type Props = { params: Promise<{ exerciseId: string; number: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Agreement of round ${(await params).number}` };
}

/** How far two markers agree in a round, and where they differ. */
export default async function AgreementPage({ params }: Props) {
  const { exerciseId, number } = await params;
  const shown = await forPage(getAgreement, { exerciseId, roundNumber: number });
  const { course, exercise, round } = shown;
  const here = `/exercises/${exercise.id}/rounds/${round.number}`;
  return (
    <Page width="wide">
      <PageHeader
        title={`Agreement in round ${round.number}`}
        trail={[
          { href: `/courses/${course.id}`, label: course.title },
          { href: `/exercises/${exercise.id}`, label: exercise.title },
          { href: `${here}/critique`, label: `Critique of round ${round.number}` },
        ]}
        lead={`${shown.finished === 0 ? 'No proof is' : `${counted(shown.finished, 'proof')} ${shown.finished === 1 ? 'is' : 'are'}`} finished by two markers${shown.waiting > 0 ? `; ${shown.waiting} still ${shown.waiting === 1 ? 'waits' : 'wait'} for one or both` : ''}.`}
        actions={
          <>
            <ButtonLink href={`${here}/second`}>Second marking</ButtonLink>
            {shown.finished > 0 && (
              <ButtonLink plainLink href={exportAddress('agreement', exercise.id, { round: String(round.number) })}>
                Agreement as CSV
              </ButtonLink>
            )}
            {shown.mayPlan && <ButtonLink href={`${here}/release`}>Release this round</ButtonLink>}
          </>
        }
      />
      <p>{secondMarkingWords(shown.setting)}</p>
      {shown.finished === 0 ? (
        <EmptyState title="Nothing to compare yet">
          Proofs appear here as soon as both markers have finished them.
        </EmptyState>
      ) : (
        <>
          <Differences shown={shown} here={here} />
          {shown.criteria.map((criterion) => (
            <OneCriterion key={criterion.versionId} criterion={criterion} />
          ))}
        </>
      )}
      <p className="quiet note-size">
        Kappa here is quadratic weighted kappa (Cohen 1968): 1 where two markers always agree, 0 where they agree as
        often as chance would have it; a difference of two levels weighs four times one of one level. It is reckoned
        from the marks as the two gave them, before anything was settled. It depends on how the levels are spread in
        this class, and says nothing about who is right.
      </p>
    </Page>
  );
}

type Shown = Awaited<ReturnType<typeof getAgreement>>;

function Differences({ shown, here }: { shown: Shown; here: string }) {
  const { differences } = shown;
  const open = differences.filter((one) => one.open > 0).length;
  if (differences.length === 0)
    return (
      <Section title="Where the two differ">
        <p>Nowhere: the two gave the same levels to every proof that both have finished.</p>
      </Section>
    );
  return (
    <Section
      title="Where the two differ"
      lead={`${counted(differences.length, 'proof')}, the largest difference first. ${open === 0 ? 'All of them are settled.' : `${open} not settled: there the first marker’s level would count in a release.`}`}
    >
      <Table caption="Proofs by which two markers differ" captionHidden>
        <thead>
          <tr>
            <th scope="col">Proof</th>
            <th scope="col">Markers</th>
            <th scope="col" className="number">
              Difference (% of mark)
            </th>
            <th scope="col" className="number">
              Criteria
            </th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {differences.map((one) => (
            <tr key={one.token}>
              <th scope="row">
                {one.mayOpen ? <Link href={`${here}/agreement/${one.token}`}>{one.shownAs}</Link> : one.shownAs}
              </th>
              <td>{one.markers.join(' and ')}</td>
              <td className="number">{withUnit(one.apart, '%', 1)}</td>
              <td className="number">{one.criteriaApart}</td>
              <td>
                <Status kind={one.open === 0 ? 'done' : 'waiting'}>
                  {one.open === 0 ? 'settled' : `${one.open} to settle`}
                </Status>
              </td>
            </tr>
          ))}
        </tbody>
      </Table>
    </Section>
  );
}

function OneCriterion({ criterion }: { criterion: Shown['criteria'][number] }) {
  const { title, levels, table, n, exact, adjacent, kappa, reading } = criterion;
  const share = (value: number | null) => (value === null ? '–' : withUnit(value * 100, '%', 1));
  return (
    <Section title={title} lead={reading}>
      <Table caption={`Figures for ${title}`} narrow captionHidden>
        <thead>
          <tr>
            <th scope="col" className="number">
              Proofs
            </th>
            <th scope="col" className="number">
              Same level
            </th>
            <th scope="col" className="number">
              Same or adjacent
            </th>
            <th scope="col" className="number">
              Weighted kappa
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td className="number">{n}</td>
            <td className="number">{share(exact)}</td>
            <td className="number">{share(adjacent)}</td>
            <td className="number">{n < fewestProofs || kappa === null ? '–' : numberText(kappa, 2)}</td>
          </tr>
        </tbody>
      </Table>
      <Table caption={`${title}: rows are the first marker’s levels, columns the second’s; figures are proofs`} narrow>
        <thead>
          <tr>
            <th scope="col">First marker</th>
            {levels.map((level, index) => (
              <th key={index} scope="col" className="number">
                {level}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.map((row, first) => (
            <tr key={first}>
              <th scope="row">{levels[first]}</th>
              {row.map((count, second) => (
                <td key={second} className="number">
                  {first === second && count > 0 ? <strong>{count}</strong> : count}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </Table>
    </Section>
  );
}
