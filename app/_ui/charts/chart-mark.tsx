import { symbol, symbolCircle, symbolCross, symbolDiamond, symbolSquare, symbolStar, symbolTriangle } from 'd3-shape';
import { classes } from '../classes';
import { percent } from './axes';

const shapes = [symbolCircle, symbolSquare, symbolTriangle, symbolDiamond, symbolCross, symbolStar];
const drawn = shapes.map((shape) => symbol(shape, 58)()!);

/** The class that gives the nth series its colour and dash; its shape is the mark's. */
export const seriesClass = (series: number): string =>
  `chart-series-${series % shapes.length} ${series >= shapes.length ? 'chart-series-dashed' : ''}`.trim();

/** A point of a series: every series has its own shape, so that telling them apart doesn't depend on colour. */
export function ChartMark({
  x,
  y,
  series,
  className,
  title,
}: {
  x: number;
  y: number;
  series: number;
  className?: string;
  title?: string;
}) {
  return (
    <svg x={percent(x)} y={percent(y)} overflow="visible">
      <path className={classes('chart-mark', seriesClass(series), className)} d={drawn[series % shapes.length]}>
        {title && <title>{title}</title>}
      </path>
    </svg>
  );
}

/** What the marks mean, each with a label. */
export function ChartKey({
  entries,
}: {
  entries: readonly { name: string; series?: number; kind?: 'band' | 'box' | 'dot' | 'reference' }[];
}) {
  return (
    <ul className="chart-key" aria-hidden="true">
      {entries.map(({ name, series = 0, kind }) => (
        <li key={name}>
          <svg width="26" height="14" viewBox="0 0 26 14">
            {kind === 'band' && <rect className="chart-band" x="1" y="1" width="24" height="12" />}
            {kind === 'box' && (
              <>
                <rect className="chart-box" x="5" y="2" width="16" height="10" />
                <path className="chart-median" d="M12 2V12" />
              </>
            )}
            {kind === 'dot' && <circle className="chart-dot" cx="13" cy="7" r="3.2" />}
            {kind === 'reference' && <path className="chart-reference" d="M13 1L18 7L13 13L8 7Z" />}
            {!kind && (
              <>
                <path className={`chart-line ${seriesClass(series)}`} d="M0 7H26" />
                <path
                  className={`chart-mark ${seriesClass(series)}`}
                  transform="translate(13 7)"
                  d={drawn[series % shapes.length]}
                />
              </>
            )}
          </svg>{' '}
          {name}
        </li>
      ))}
    </ul>
  );
}
