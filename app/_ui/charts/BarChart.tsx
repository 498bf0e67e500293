import { numberText, signed } from '@/shared/text/number';
import { chartScale, percent, Places } from './axes';
import { type ChartCell, type ChartColumn, ChartFrame, type ChartText } from './chart-frame';

/**
 * A bar; `more` are further cells of its row in the table, in the order of `moreColumns`. Null is read as “nothing”.
 */
type Bar = { name: string; value: number | null; more?: readonly ChartCell[] };
type Props = ChartText & {
  x: { label: string; unit?: string; include?: readonly number[]; digits?: number; plus?: boolean };
  rowName: string;
  bars: readonly Bar[];
  moreColumns?: readonly ChartColumn[];
  empty?: string;
};

const rowHeight = 44;

/**
 * Bars lying from 0, each with its name above and its number at its end; below 0 they go to the left and are hatched.
 * Data is given once: drawing, table and CSV come from it. Needs no script.
 * @example <BarChart title="Kinds of side" reading="…" fileName="sides" rowName="Sides" x={{ label: 'Outside tolerance', unit: '%' }}
 *   bars={[{ name: 'round to open', value: 42, more: [120] }]} moreColumns={[{ name: 'Pairs', digits: 0 }]} />
 */
export function BarChart({
  x,
  rowName,
  bars,
  moreColumns = [],
  empty = 'There is nothing to draw yet.',
  ...message
}: Props) {
  const values = bars.flatMap(({ value }) => (value === null ? [] : [value]));
  if (values.length === 0)
    return (
      <p className="quiet">
        {message.title}: {empty}
      </p>
    );

  const digits = x.digits ?? 1;
  const words = (value: number) => (x.plus ? signed(value, digits) : numberText(value, digits));
  // If every bar is null the axis still runs, from 0 to 1.
  const across = chartScale('linear', [
    0,
    ...(values.every((value) => value === 0) ? [1] : []),
    ...values.map((value) => (value < 0 ? value * 1.25 : value)),
    ...(x.include ?? []),
  ]);
  const zero = across.at(0);
  return (
    <ChartFrame
      {...message}
      numbers={{
        columns: [{ name: rowName }, { name: x.label, unit: x.unit, digits, plus: x.plus }, ...moreColumns],
        rows: bars.map(({ name, value, more = [] }) => [name, value, ...more]),
      }}
      drawing={(ids) => (
        <div className="chart-plot chart-plot-above">
          <svg
            role="img"
            aria-labelledby={ids.name}
            aria-describedby={ids.description}
            className="chart-field"
            height={bars.length * rowHeight}
          >
            <Places scale={across} words={words} lines above />
            {bars.map(({ name, value }, index) => (
              <svg key={index} y={index * rowHeight} height={rowHeight} width="100%" overflow="visible">
                <text className="chart-words chart-name" x="0" dx="6" y="16">
                  {name}
                </text>
                {value === null ? (
                  <text className="chart-words" x={percent(zero)} dx="6" y="34">
                    nothing
                  </text>
                ) : (
                  <>
                    <rect
                      className={value < 0 ? 'chart-bar chart-bar-below' : 'chart-bar'}
                      x={percent(Math.min(zero, across.at(value)))}
                      width={percent(Math.abs(across.at(value) - zero))}
                      y="22"
                      height="16"
                    />
                    <text
                      className="chart-words"
                      x={percent(across.at(value))}
                      dx={value < 0 ? -6 : 6}
                      textAnchor={value < 0 ? 'end' : 'start'}
                      y="34"
                    >
                      {words(value)}
                    </text>
                  </>
                )}
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
