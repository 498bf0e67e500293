import { percent, type ChartScale } from './chart-scale';

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

/** Places along the foot of the plot; `lines` draws them up through it, `above` sets the words over it. */
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
  // Places too near to each other to be said differently are said once.
  const said = scale.ticks.filter((tick, index) => index === 0 || words(tick) !== words(scale.ticks[index - 1]!));
  return said.map((tick) => (
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
