import Link from 'next/link';
import type { ComponentProps } from 'react';
import { Section } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import { SpreadChart } from '@/app/_ui/charts/SpreadChart';
import type { PairTotals } from '@/shared/class/pair-totals';
import type { ClassLine, ClassSummary, Spread } from '@/shared/class/summary';
import { numberText, signed } from '@/shared/text/number';

type Props = {
  summary: Pick<ClassSummary, 'lines'>;
  here: string;
  round: number;
  opened: string | undefined;
  /** For the opened line. */ totals: ComponentProps<typeof LineTotals>['totals'] | null;
};

/** For each line and pair, how far the class is from the nearest reference; one line at a time is open. */
export function ClassLines({ summary, here, round, opened, totals }: Props) {
  if (summary.lines.length === 0)
    return (
      <Section title="Pair by pair">
        <p>
          As soon as proofs arrive, each line appears here with the class’s distance from the nearest reference, pair by
          pair.
        </p>
      </Section>
    );
  return (
    <Section
      title="Pair by pair"
      lead="How far the class is from the nearest reference, in 1/1000 em, overall tracking discounted. Above 0 is wider than the reference, below is tighter. The quartiles hold the middle half of the class."
    >
      <ul className="card-list">
        {summary.lines.map((line) => (
          <li key={line.specimenVersionId} id={`line-${line.specimenVersionId}`}>
            <p>
              {opened === line.specimenVersionId ? (
                <strong>{line.text}</strong>
              ) : (
                <Link
                  href={`${here}?round=${round}&line=${line.specimenVersionId}#line-${line.specimenVersionId}`}
                  prefetch={false}
                >
                  {line.text}
                </Link>
              )}{' '}
              <span className="quiet">{lineWords(line)}</span>
            </p>
            {opened === line.specimenVersionId && totals && <LineTotals totals={totals} />}
            {opened === line.specimenVersionId && <LineTable line={line} />}
          </li>
        ))}
      </ul>
    </Section>
  );
}

function lineWords({ compared, sent, pairs }: ClassLine): string {
  if (compared === 0) return sent === 0 ? 'no spacings yet' : `${sent} spacings; no reference to compare with`;
  const missed = pairs.filter(({ outside }) => outside * 2 > compared).map(({ letters }) => letters);
  return missed.length === 0
    ? 'most of the class is within tolerance everywhere'
    : `more than half of the class is outside at ${missed.join(', ')}`;
}

function LineTable({ line }: { line: ClassLine }) {
  if (line.compared === 0)
    return (
      <p>
        There is no comparison of this line. Set a reference and the proofs are compared with it, those already sent
        too.
      </p>
    );
  return (
    <Table
      caption={
        <>
          {line.text}, {line.compared} spacings; as a whole {spreadWords(line.tightness)}
        </>
      }
      narrow
    >
      <thead>
        <tr>
          <th scope="col">Pair</th>
          <th scope="col" className="number">
            Median
          </th>
          <th scope="col" className="number">
            Lower quartile
          </th>
          <th scope="col" className="number">
            Upper quartile
          </th>
          <th scope="col" className="number">
            Outside tolerance
          </th>
        </tr>
      </thead>
      <tbody>
        {line.pairs.map(({ letters, spread, outside }, index) => (
          <tr key={index}>
            <th scope="row">{letters}</th>
            <td className="number">{spread ? signed(spread.median, 1) : '–'}</td>
            <td className="number">{spread ? signed(spread.lower, 1) : '–'}</td>
            <td className="number">{spread ? signed(spread.upper, 1) : '–'}</td>
            <td className="number">
              {outside} of {line.compared}
            </td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}

const spreadWords = (spread: Spread | null): string => {
  if (!spread) return 'not compared';
  const median = Math.round(spread.median);
  return median === 0
    ? 'as tight as the reference'
    : `${signed(median)} ${median > 0 ? 'wider' : 'tighter'} than the reference`;
};

/**
 * What the class set at each pair of a line, beside the references: where no spacing falls in the band, the class
 * judges the pair differently.
 */
function LineTotals({
  totals: { text, count, pairs },
}: {
  totals: { text: string; count: number; pairs: PairTotals[] };
}) {
  const beside = pairs.filter(
    ({ spread, band }) => spread !== null && band !== null && (spread.median < band.from || spread.median > band.to),
  );
  const compared = pairs.some(({ band }) => band !== null);
  return (
    <SpreadChart
      level={3}
      title={`Totals of “${text}”, pair by pair`}
      fileName="totals"
      rowName="Pair"
      reading={
        <>
          Built-in, tracking and offset together, {numberText(count)} spacings.{' '}
          {compared ? (
            beside.length === 0 ? (
              'The middle of the class lies where a reference allows it at every pair.'
            ) : (
              <>
                The middle of the class lies outside of what any reference allows at{' '}
                {beside.map(({ letters }) => letters).join(', ')}.
              </>
            )
          ) : (
            'There is no reference to compare them with.'
          )}{' '}
          Overall tracking is part of a total; the table below discounts it.
        </>
      }
      x={{ label: 'Total', unit: '1/1000 em', plus: true }}
      valuesName="Spacings of the class"
      marksName="Reference"
      bandName="Allowed by a reference"
      rows={pairs.map(({ letters, values, spread, references, band }) => ({
        name: letters,
        values: values.length > 0 ? values : undefined,
        spread: spread ?? undefined,
        marks: references,
        band: band ?? undefined,
      }))}
    />
  );
}
