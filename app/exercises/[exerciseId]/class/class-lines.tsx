import Link from 'next/link';
import type { ComponentProps } from 'react';
import { Section } from '@/app/_ui/Page';
import { Table } from '@/app/_ui/Table';
import { SpreadChart } from '@/app/_ui/charts/SpreadChart';
import type { PairTotals } from '@/shared/class/pair-totals';
import type { ClassLine, ClassSummary, Spread, Yardstick } from '@/shared/class/summary';
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
          As soon as proofs arrive, each line appears here with the class’s distance from the nearest reference or,
          where it has none, from the usual range, pair by pair.
        </p>
      </Section>
    );
  return (
    <Section
      title="Pair by pair"
      lead="How far the class is from the nearest reference, in 1/1000 em, overall tracking discounted. Above 0 is wider, below is tighter. A line without a reference is held against the usual range of its face. The quartiles hold the middle half of the class."
    >
      <ul className="card-list">
        {mostMissedFirst(summary.lines).map((line) => (
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

const mostMissedFirst = (lines: readonly ClassLine[]): ClassLine[] =>
  [...lines].sort((one, other) => missedShare(other) - missedShare(one));

/** Of all judged gaps of a line, the share that is outside. */
function missedShare({ pairs }: ClassLine): number {
  const of = (key: 'judged' | 'outside') => pairs.reduce((sum, pair) => sum + pair[key], 0);
  return of('outside') / Math.max(1, of('judged'));
}

function lineWords({ yardstick, sent, pairs }: ClassLine): string {
  if (yardstick === null) return sent === 0 ? 'no spacings yet' : `${sent} spacings; nothing to compare with`;
  const missed = pairs.filter(({ outside, judged }) => outside * 2 > judged).map(({ letters }) => letters);
  const { within, beyond } = yardstickWords[yardstick];
  return missed.length === 0
    ? `most of the class is ${within} everywhere`
    : `more than half of the class is ${beyond} at ${missed.join(', ')}`;
}

const yardstickWords: Record<Yardstick, { within: string; beyond: string; column: string; as: string; than: string }> =
  {
    reference: {
      within: 'within tolerance',
      beyond: 'outside tolerance',
      column: 'Outside tolerance',
      as: 'as tight as the reference',
      than: 'than the reference',
    },
    'usual-range': {
      within: 'about as usual',
      beyond: 'wider or tighter than usual',
      column: 'Outside the usual range',
      as: 'as tight as usual',
      than: 'than usual',
    },
  };

function LineTable({ line }: { line: ClassLine }) {
  if (line.yardstick === null)
    return (
      <p>
        There is nothing to compare this line with. Set a reference and the proofs are compared with it, those already
        sent too.
      </p>
    );
  return (
    <Table
      caption={
        <>
          {line.text}, {line.judged} spacings; as a whole {spreadWords(line.tightness, line.yardstick)}
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
            {yardstickWords[line.yardstick].column}
          </th>
        </tr>
      </thead>
      <tbody>
        {line.pairs.map(({ letters, spread, judged, outside }, index) => (
          <tr key={index}>
            <th scope="row">{letters}</th>
            <td className="number">{spread ? signed(spread.median, 1) : '–'}</td>
            <td className="number">{spread ? signed(spread.lower, 1) : '–'}</td>
            <td className="number">{spread ? signed(spread.upper, 1) : '–'}</td>
            <td className="number">{judged === 0 ? '–' : `${outside} of ${judged}`}</td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}

const spreadWords = (spread: Spread | null, yardstick: Yardstick): string => {
  if (!spread) return 'not compared';
  const { as, than } = yardstickWords[yardstick];
  const median = Math.round(spread.median);
  return median === 0 ? as : `${signed(median)} ${median > 0 ? 'wider' : 'tighter'} ${than}`;
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
