import { area, line } from 'd3-shape';
import { numberText, signed } from '@/shared/text/number';
import { chartScale, Levels, percent, Places, type ScaleKind } from './axes';
import { type ChartCell, ChartFrame, type ChartText } from './chart-frame';
import { ChartKey, ChartMark, seriesClass } from './chart-mark';

/**
 * A point; `y` is null where there is no value, which leaves a gap in the line. `lower` and `upper` are drawn as a
 * whisker.
 */
export type ChartPoint = { x: number; y: number | null; lower?: number; upper?: number };
type Axis = { label: string; unit?: string };
type Props = ChartText & {
  /** `words` formats a value of x (a date, “Round 2”); numbers otherwise. */
  x: Axis & { scale: ScaleKind; words?: (value: number) => string };
  /** `include`: values that must be on the axis (usually 0); `digits`: decimals; `plus`: with sign. */
  y: Axis & { include?: readonly number[]; digits?: number; plus?: boolean };
  /** `band` draws `lower` to `upper` as an area along x, with a line through its middle, instead of whiskers. */
  series: readonly { name: string; points: readonly ChartPoint[]; dotsOnly?: boolean; band?: boolean }[];
  /** Ranges of y behind the lines, such as a tolerance. */
  bands?: readonly { name: string; from: number; to: number }[];
  /** Shown while there are no points yet. */
  empty?: string;
};

/**
 * Lines with dots over x (linear, doublings, time or rounds), at most twelve series. Data is given once: drawing, table
 * (a row for each x, a column for each series) and CSV come from it. Needs no script.
 * @example <LineChart title="Median deviation" reading="It fell by half." fileName="progress" x={{ label: 'Round', scale: 'round' }}
 *   y={{ label: 'Deviation', unit: '1/1000 em', include: [0] }} series={[{ name: 'HARBOUR', points: [{ x: 1, y: 31 }, {
 * x: 2, y: 14 }] }]} />
 */
export function LineChart({ x, y, series, bands = [], empty = 'There is nothing to draw yet.', ...message }: Props) {
  const points = series.flatMap((one) => one.points);
  const heights = points
    .flatMap(({ y: height, lower, upper }) => [height, lower, upper])
    .filter((value): value is number => typeof value === 'number');
  const xWords = x.words ?? ((value: number) => numberText(value, 2));
  const yWords = (value: number) => (y.plus ? signed(value, 3) : numberText(value, 3));
  if (heights.length === 0)
    return (
      <p className="quiet">
        {message.title}: {empty}
      </p>
    );

  // One place along the axis is no course of anything: the numbers are shown, and no chart.
  const single = new Set(points.filter(({ y: height }) => height !== null).map((point) => point.x)).size < 2;
  const across = chartScale(
    x.scale,
    points.map((point) => point.x),
  );
  const up = chartScale('linear', [...heights, ...(y.include ?? []), ...bands.flatMap(({ from, to }) => [from, to])]);
  const path = line<ChartPoint>()
    .defined((point) => point.y !== null)
    .x((point) => across.at(point.x))
    .y((point) => 100 - up.at(point.y!));
  const stretch = area<ChartPoint>()
    .defined(({ lower, upper }) => lower !== undefined && upper !== undefined)
    .x((point) => across.at(point.x))
    .y0((point) => 100 - up.at(point.lower!))
    .y1((point) => 100 - up.at(point.upper!))
    .digits(2);
  return (
    <ChartFrame
      {...message}
      numbers={{
        columns: [{ name: x.label, unit: x.unit, words: xWords }, ...columnsOf(series, y)],
        rows: rowsOf(series),
      }}
      chartKey={
        (series.length > 1 || bands.length > 0) && (
          <ChartKey
            entries={[
              ...series.map(({ name }, index) => ({ name, series: index })),
              ...bands.map(({ name }) => ({ name, kind: 'band' as const })),
            ]}
          />
        )
      }
      drawing={(ids) =>
        single ? (
          <p className="quiet note-size">With a second value of “{x.label}” a chart appears here.</p>
        ) : (
          <div className="chart-plot">
            <p className="chart-axis" aria-hidden="true">
              {y.label}
              {y.unit && `, ${y.unit}`}
            </p>
            <svg
              role="img"
              aria-labelledby={ids.name}
              aria-describedby={ids.description}
              className="chart-field"
              height="260"
            >
              <Levels scale={up} words={yWords} />
              <Places scale={across} words={xWords} />
              <svg viewBox="0 0 100 100" preserveAspectRatio="none" width="100%" height="100%" overflow="visible">
                {bands.map(({ name, from, to }) => (
                  <rect
                    key={name}
                    className="chart-band"
                    x="0"
                    width="100"
                    y={100 - up.at(to)}
                    height={up.at(to) - up.at(from)}
                  />
                ))}
                {series.map(
                  ({ name, points: own, band }) =>
                    band && <path key={name} className="chart-band" d={stretch(own) ?? undefined} />,
                )}
                {series.map(
                  ({ name, points: own, dotsOnly }, index) =>
                    !dotsOnly && (
                      <path key={name} className={`chart-line ${seriesClass(index)}`} d={path(own) ?? undefined} />
                    ),
                )}
              </svg>
              {series.map(({ name, points: own, band }, index) =>
                own.map(
                  (point, place) =>
                    point.y !== null && (
                      <g key={`${name} ${place}`}>
                        {!band && point.lower !== undefined && point.upper !== undefined && (
                          <line
                            className={`chart-whisker ${seriesClass(index)}`}
                            x1={percent(across.at(point.x))}
                            x2={percent(across.at(point.x))}
                            y1={percent(100 - up.at(point.lower))}
                            y2={percent(100 - up.at(point.upper))}
                          />
                        )}
                        <ChartMark
                          x={across.at(point.x)}
                          y={100 - up.at(point.y)}
                          series={index}
                          title={`${name}, ${xWords(point.x)}: ${yWords(Math.round(point.y * 1000) / 1000)}`}
                        />
                      </g>
                    ),
                ),
              )}
            </svg>
            <p className="chart-axis chart-axis-foot" aria-hidden="true">
              {x.label}
              {x.unit && `, ${x.unit}`}
            </p>
          </div>
        )
      }
    />
  );
}

const spreads = (points: readonly ChartPoint[]): boolean => points.some(({ lower }) => lower !== undefined);

const columnsOf = (series: Props['series'], { unit, digits = 2, plus }: Props['y']) =>
  series.flatMap(({ name, points }) => [
    { name, unit, digits, plus },
    ...(spreads(points)
      ? [
          { name: `${name}, from`, unit, digits, plus },
          { name: `${name}, to`, unit, digits, plus },
        ]
      : []),
  ]);

/** A row for each x; where a series has several points at one x, as many rows as it has. */
function rowsOf(series: Props['series']): ChartCell[][] {
  const places = [...new Set(series.flatMap(({ points }) => points.map(({ x }) => x)))].sort(
    (one, other) => one - other,
  );
  return places.flatMap((x) => {
    const here = series.map(({ points }) => points.filter((point) => point.x === x));
    const deepest = Math.max(...here.map((points) => points.length));
    return Array.from({ length: deepest }, (_, index) => [
      x,
      ...series.flatMap(({ points }, which) => {
        const point = here[which]![index];
        return [point?.y ?? null, ...(spreads(points) ? [point?.lower ?? null, point?.upper ?? null] : [])];
      }),
    ]);
  });
}
