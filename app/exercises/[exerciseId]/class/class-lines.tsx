import Link from 'next/link';
import type { ComponentProps } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { Section } from '@/app/_ui/Page';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { Table } from '@/app/_ui/Table';
import { SpreadChart } from '@/app/_ui/charts/SpreadChart';
import type { ShownClass } from '@/lib/class/class';
import { lineWords } from '@/shared/line/line-words';
import type { GapMark } from '@/shared/line/shapes';
import type { PairTotals } from '@/shared/class/pair-totals';
import type { ClassLine, ClassSummary, Spread, Yardstick } from '@/shared/class/summary';
import { numberText, signed } from '@/shared/text/number';

/** What lines are drawn from. */
export type Sheets = ShownClass['sheets'];

type Props = {
  summary: Pick<ClassSummary, 'lines'>;
  sheets: Sheets;
  here: string;
  round: number;
  opened: string | undefined;
  /** For the opened line. */ totals: ComponentProps<typeof LineTotals>['totals'] | null;
};

/** For each line and pair, how far the class is from the nearest reference; one line at a time is open. */
export function ClassLines({ summary, sheets, here, round, opened, totals }: Props) {
  if (summary.lines.length === 0)
    return (
      <Section title="Line by line">
        <p>
          As soon as proofs arrive, each line appears here with the class’s distance from the nearest reference or,
          where it has none, from the usual range, pair by pair.
        </p>
      </Section>
    );
  return (
    <Section
      title="Line by line"
      lead="As the middle of the class spaced each line, fitted to its column; a wedge marks where more than half of the class is outside. Most missed first."
    >
      <ul className="class-lines" role="list">
        {mostMissedFirst(summary.lines).map((line) => (
          <li
            key={line.specimenVersionId}
            id={`line-${line.specimenVersionId}`}
            className={opened === line.specimenVersionId ? 'class-line-open' : undefined}
          >
            <LineOfClass
              line={line}
              sheet={sheets.find(({ specimenVersionId }) => specimenVersionId === line.specimenVersionId)}
              href={
                opened === line.specimenVersionId
                  ? null
                  : `${here}?round=${round}&line=${line.specimenVersionId}#line-${line.specimenVersionId}`
              }
            />
            {opened === line.specimenVersionId && totals && <LineTotals totals={totals} />}
            {opened === line.specimenVersionId && <LineTable line={line} />}
          </li>
        ))}
      </ul>
    </Section>
  );
}

type LineOfClassProps = { line: ClassLine; sheet: Sheets[number] | undefined; href: string | null };

/** One line as drawn, with what the class misses in it; `href` opens its numbers. */
function LineOfClass({ line, sheet, href }: LineOfClassProps) {
  return (
    <>
      {sheet && line.middle && (
        <SheetFrame ground={sheet.ground}>
          <LineDrawing pack={sheet.pack} spacing={line.middle} marks={marksOf(line)} label={null} />
        </SheetFrame>
      )}
      <p className="work-line-words">
        {href === null ? (
          <strong>{line.text}</strong>
        ) : (
          <Link href={href} prefetch={false}>
            {line.text}
          </Link>
        )}
        {sheet && <span>{lineWords(sheet)}</span>}
      </p>
      <p>{missedWords(line)}</p>
    </>
  );
}

/** Where more than half of the class is outside. */
const missedPairs = ({ pairs }: ClassLine) =>
  pairs.flatMap((pair, index) => (pair.outside * 2 > pair.judged && pair.spread ? [{ ...pair, index }] : []));

/** The larger the share of the class, the larger the wedge. */
const marksOf = (line: ClassLine): GapMark[] =>
  missedPairs(line).map(({ index, spread, outside, judged }) => ({
    gap: index,
    fault: spread!.median > 0 ? 'wide' : 'tight',
    strength: outside * 10 > judged * 9 ? 3 : outside * 10 > judged * 7 ? 2 : 1,
  }));

const mostMissedFirst = (lines: readonly ClassLine[]): ClassLine[] =>
  [...lines].sort((one, other) => missedShare(other) - missedShare(one));

/** Of all judged gaps of a line, the share that is outside. */
function missedShare({ pairs }: ClassLine): number {
  const of = (key: 'judged' | 'outside') => pairs.reduce((sum, pair) => sum + pair[key], 0);
  return of('outside') / Math.max(1, of('judged'));
}

/** “TA: 9 of 14 outside tolerance, typically 22/1000 em wider.” */
function missedWords(line: ClassLine): string {
  const { yardstick, sent } = line;
  if (yardstick === null) return sent === 0 ? 'No spacings yet.' : `${sent} spacings; nothing to compare with.`;
  const { within, beyond } = yardstickWords[yardstick];
  const missed = missedPairs(line);
  if (missed.length === 0) return `Most of the class is ${within} everywhere.`;
  const [first, ...more] = missed
    .toSorted((one, other) => other.outside / other.judged - one.outside / one.judged)
    .map(
      ({ letters, spread, outside, judged }) =>
        `${letters}: ${outside} of ${judged}, typically ${numberText(Math.abs(spread!.median), 0)}/1000 em too ${spread!.median > 0 ? 'wide' : 'tight'}`,
    );
  return `${[`Outside ${beyond} at ${first}`, ...more].join('; ')}.`;
}

const yardstickWords: Record<Yardstick, { within: string; beyond: string; column: string; as: string; than: string }> =
  {
    reference: {
      within: 'within tolerance',
      beyond: 'tolerance',
      column: 'Outside tolerance',
      as: 'as tight as the reference',
      than: 'than the reference',
    },
    'usual-range': {
      within: 'about as usual',
      beyond: 'the usual range',
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
          {line.text}, {line.judged} spacings; as a whole {spreadWords(line.tightness, line.yardstick)}. Distance in
          1/1000 em, overall tracking discounted: above 0 is wider, below is tighter. The quartiles hold the middle half
          of the class.
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
