import { scaleLinear, scaleLog, scaleUtc } from 'd3-scale';

type Words = (value: number) => string;

/** Levels across the plot with their numbers at the left; the level of 0 is drawn stronger. */
export function Levels({ scale, words }: { scale: ChartScale; words: Words }) {
  return scale.ticks.map((tick) => (
    <g key={tick}>
      <line
        className={tick === 0 ? 'chart-zero' : 'chart-grid'}
        x1="0"
        x2="100%"
        y1={percent(100 - scale.at(tick))}
        y2={percent(100 - scale.at(tick))}
      />
      <text className="chart-words" x="-8" y={percent(100 - scale.at(tick))} dy="0.33em" textAnchor="end">
        {words(tick)}
      </text>
    </g>
  ));
}

/** Ticks along the foot of the plot; `lines` draws them up through it, `above` puts the labels above it. */
export function Places({
  scale,
  words,
  lines,
  above,
}: {
  scale: ChartScale;
  words: Words;
  lines?: boolean;
  above?: boolean;
}) {
  // Ticks too close together to have different labels get one.
  const message = scale.ticks.filter((tick, index) => index === 0 || words(tick) !== words(scale.ticks[index - 1]!));
  return message.map((tick) => (
    <g key={tick}>
      {lines && (
        <line
          className={tick === 0 ? 'chart-zero' : 'chart-grid'}
          x1={percent(scale.at(tick))}
          x2={percent(scale.at(tick))}
          y1="0"
          y2="100%"
        />
      )}
      <text
        className="chart-words"
        x={percent(scale.at(tick))}
        y={above ? '0' : '100%'}
        dy={above ? '-0.5em' : '1.4em'}
        textAnchor="middle"
      >
        {words(tick)}
      </text>
    </g>
  ));
}

/** The scale of an axis: linear, by doublings, in time (milliseconds since 1970, UTC), or by the number of a round. */
export type ScaleKind = 'linear' | 'log2' | 'time' | 'round';
export type ChartScale = { at: (value: number) => number; ticks: number[] };

const day = 86_400_000;

/**
 * Places values along an axis of 0 to 100 (percent of its length).
 *
 * @param values every value the axis must show; must not be empty.
 * @throws RangeError on a value that is not a number, or is 0 or below on a scale of doublings.
 */
export function chartScale(kind: ScaleKind, values: readonly number[], wanted = 5): ChartScale {
  const wrong = values.find((value) => !Number.isFinite(value) || (kind === 'log2' && value <= 0));
  if (wrong !== undefined || values.length === 0)
    throw new RangeError(`A chart cannot place ${wrong ?? 'no values at all'} on a scale of kind “${kind}”.`);
  const least = Math.min(...values),
    most = Math.max(...values);
  if (kind === 'round') {
    const scale = scaleLinear([least - 0.25, most + 0.25], [0, 100]);
    return {
      at: scale,
      ticks: Array.from({ length: Math.floor(most) - Math.ceil(least) + 1 }, (_, index) => Math.ceil(least) + index),
    };
  }
  if (kind === 'log2') {
    const scale = scaleLog([least / 1.15, most * 1.15], [0, 100]).base(2);
    return {
      at: scale,
      ticks: [...new Set(values)]
        .sort((one, other) => one - other)
        .filter((value, index, all) => index === 0 || value / all[index - 1]! > 1.2),
    };
  }
  const aside = kind === 'time' ? day : 1;
  const [from, to] = least === most ? [least - aside, most + aside] : [least, most];
  if (kind === 'time') {
    const scale = scaleUtc([from, to], [0, 100]);
    return { at: scale, ticks: wholeDays(from, to, wanted) };
  }
  const scale = scaleLinear([from, to], [0, 100]).nice(wanted);
  return { at: scale, ticks: scale.ticks(wanted) };
}

/** Midnights (UTC) in even steps of whole days, at most about as many as wanted, so that labels of days are even. */
function wholeDays(from: number, to: number, wanted: number): number[] {
  const first = Math.ceil(from / day);
  const days = Math.floor(to / day) - first;
  const step = Math.max(1, Math.ceil(days / wanted));
  return Array.from({ length: Math.floor(days / step) + 1 }, (_, index) => (first + index * step) * day);
}

/** A position as an attribute: a length in percent with two decimals. */
export const percent = (value: number): string => `${Math.round(value * 100) / 100}%`;
