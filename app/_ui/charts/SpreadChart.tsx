import { numberText, signed } from '@/shared/text/number';
import { quantile } from '@/shared/stats/quantile';
import { chartScale, type ChartScale, percent, Places } from './axes';
import { type ChartCell, ChartFrame, type ChartText } from './chart-frame';
import { ChartKey } from './chart-mark';

/** What is known about a row whose single values are unknown. */
export type RowSpread = { count: number; least: number; lower: number; median: number; upper: number; most: number };
type SpreadRow = {
  name: string;
  /** The values themselves, or their spread if only that is known; neither where there is no data. */
  values?: readonly number[];
  spread?: RowSpread;
  /** Values to compare with the rest, such as references. */
  marks?: readonly { name: string; value: number }[];
  band?: { from: number; to: number };
};
type FilledRow = Omit<SpreadRow, 'spread'> & { spread: RowSpread | null };
type Props = ChartText & {
  x: { label: string; unit?: string; include?: readonly number[]; digits?: number; plus?: boolean };
  /** What a row stands for: the first column of the table (“Pair”). */
  rowName: string;
  rows: readonly SpreadRow[];
  /** Names of the marks, the band and the values. */
  marksName?: string;
  bandName?: string;
  valuesName?: string;
  empty?: string;
};

const mostDots = 40;

/**
 * Distributions, a row each, over one x: dots up to forty values, a box (middle half, median, whiskers to least and
 * most) above; marks and a band lie under them. Quartiles are of type 7. Data is given once: drawing, table and CSV
 * come from it.
 * @example <SpreadChart title="Totals" reading="…" fileName="totals" rowName="Pair" x={{ label: 'Total', unit: '1/1000 em', plus: true }}
 *   rows={[{ name: 'AV', values: [-90, -70, -75], marks: [{ name: 'Reference 1', value: -80 }], band: { from: -95, to:
 * -65 } }]} />
 */
export function SpreadChart({
  x,
  rowName,
  rows,
  marksName = 'Reference',
  bandName = 'Tolerance',
  valuesName = 'Spacings',
  empty = 'There is nothing to draw yet.',
  ...message
}: Props) {
  const filled = rows.map((row): FilledRow => ({ ...row, spread: row.spread ?? spreadOf(row.values ?? []) }));
  const all = filled.flatMap(({ spread, marks, band }) => [
    ...(spread ? [spread.least, spread.most] : []),
    ...(marks ?? []).map(({ value }) => value),
    ...(band ? [band.from, band.to] : []),
  ]);
  if (all.length === 0)
    return (
      <p className="quiet">
        {message.title}: {empty}
      </p>
    );

  const across = chartScale('linear', [...all, ...(x.include ?? [])]);
  const words = (value: number) => (x.plus ? signed(value, 3) : numberText(value, 3));
  const beside = rows.every(({ name }) => [...name].length <= 6);
  const height = beside ? 28 : 46;
  const dots = filled.every(({ values }) => values !== undefined && values.length <= mostDots);
  return (
    <ChartFrame
      {...message}
      numbers={numbersOf(filled, { x, rowName, marksName, bandName })}
      chartKey={
        <ChartKey
          entries={[
            dots
              ? { name: valuesName, kind: 'dot' }
              : { name: `${valuesName}: middle half, median, least and most`, kind: 'box' },
            ...(rows.some(({ marks }) => marks?.length) ? [{ name: marksName, kind: 'reference' as const }] : []),
            ...(rows.some(({ band }) => band) ? [{ name: bandName, kind: 'band' as const }] : []),
          ]}
        />
      }
      drawing={(ids) => (
        <div className={beside ? 'chart-plot chart-plot-beside' : 'chart-plot chart-plot-above'}>
          <svg
            role="img"
            aria-labelledby={ids.name}
            aria-describedby={ids.description}
            className="chart-field"
            height={rows.length * height}
          >
            <Places scale={across} words={words} lines above />
            {rows.length > 12 && <Places scale={across} words={words} />}
            {filled.map((row, index) => (
              <svg key={index} y={index * height} height={height} width="100%" overflow="visible">
                {beside ? (
                  <text className="chart-words chart-name" x="-8" y="18" textAnchor="end">
                    {row.name}
                  </text>
                ) : (
                  <text className="chart-words chart-name" x="0" y="14">
                    {row.name}
                  </text>
                )}
                <svg y={beside ? 0 : 18} height="28" width="100%" overflow="visible">
                  <Row row={row} scale={across} dots={dots} />
                </svg>
              </svg>
            ))}
          </svg>
          <p className="chart-axis chart-axis-foot" aria-hidden="true">
            {x.label}
            {x.unit && `, ${x.unit}`}
          </p>
        </div>
      )}
    />
  );
}

function Row({
  row: { values = [], spread, marks = [], band },
  scale,
  dots,
}: {
  row: FilledRow;
  scale: ChartScale;
  dots: boolean;
}) {
  const at = (value: number) => percent(scale.at(value));
  const wide = (from: number, to: number) => percent(scale.at(to) - scale.at(from));
  const taken = new Map<number, number>();
  return (
    <>
      <line className="chart-grid" x1="0" x2="100%" y1="14" y2="14" />
      {band && <rect className="chart-band" x={at(band.from)} width={wide(band.from, band.to)} y="2" height="24" />}
      {!dots && spread && (
        <>
          <line className="chart-whisker chart-series-0" x1={at(spread.least)} x2={at(spread.most)} y1="14" y2="14" />
          <rect className="chart-box" x={at(spread.lower)} width={wide(spread.lower, spread.upper)} y="7" height="14" />
          <line className="chart-median" x1={at(spread.median)} x2={at(spread.median)} y1="5" y2="23" />
        </>
      )}
      {dots &&
        values.map((value, index) => {
          // Equal values are stacked in a small heap around the row's middle instead of covering each other.
          const place = Math.round(scale.at(value));
          const before = taken.get(place) ?? 0;
          taken.set(place, before + 1);
          const away = Math.min(10, Math.ceil(before / 2) * 4) * (before % 2 === 0 ? 1 : -1);
          return <circle key={index} className="chart-dot" cx={at(value)} cy={14 + away} r="3.2" />;
        })}
      {marks.map(({ name, value }) => (
        <svg key={name} x={at(value)} y="14" overflow="visible">
          <path className="chart-reference" d="M0 -8L5 0L0 8L-5 0Z">
            <title>{`${name}: ${signed(value, 1)}`}</title>
          </path>
        </svg>
      ))}
    </>
  );
}

function spreadOf(values: readonly number[]): RowSpread | null {
  if (values.length === 0) return null;
  const at = (share: number) => quantile(values, share);
  return { count: values.length, least: at(0), lower: at(0.25), median: at(0.5), upper: at(0.75), most: at(1) };
}

function numbersOf(
  rows: readonly FilledRow[],
  {
    x: { unit, digits = 1, plus },
    rowName,
    marksName,
    bandName,
  }: Pick<Props, 'x' | 'rowName'> & { marksName: string; bandName: string },
) {
  const mostMarks = Math.max(0, ...rows.map(({ marks }) => marks?.length ?? 0));
  const banded = rows.some(({ band }) => band);
  const value = (name: string) => ({ name, unit, digits, plus });
  const columns = [
    { name: rowName },
    { name: 'Values', digits: 0 },
    ...['Least', 'Lower quartile', 'Median', 'Upper quartile', 'Most'].map(value),
    ...Array.from({ length: mostMarks }, (_, index) =>
      value(mostMarks === 1 ? marksName : `${marksName} ${index + 1}`),
    ),
    ...(banded ? [value(`${bandName} from`), value(`${bandName} to`)] : []),
  ];
  const cells = rows.map(({ name, spread, marks = [], band }): ChartCell[] => [
    name,
    spread?.count ?? 0,
    spread?.least ?? null,
    spread?.lower ?? null,
    spread?.median ?? null,
    spread?.upper ?? null,
    spread?.most ?? null,
    ...Array.from({ length: mostMarks }, (_, index) => marks[index]?.value ?? null),
    ...(banded ? [band?.from ?? null, band?.to ?? null] : []),
  ]);
  return { columns, rows: cells };
}
