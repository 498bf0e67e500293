import { present, type History } from '@/shared/editing/history';
import type { SpacingDocument } from '@/shared/editing/document';
import { prepareLine } from '@/shared/measure/prepared-line';
import { numberText, signed } from '@/shared/text/number';
import { usualWords, type BesideUsual } from '@/shared/wording/usual-words';
import { useBench, useSession } from '../context';
import { current } from '../session/state';
import { besideUsual } from '../usual';
import { useUsual } from '../use-usual';
import styles from '../bench.module.css';

/**
 * The offset of the chosen gap on a scale, with a bracket where designers usually set the pair: thick for half of them,
 * thin ends for nine tenths. Only where the bench may show evenness, and after the pair was tried.
 */
export function UsualScale({ pair }: { pair: number }) {
  const { props } = useSession();
  const usual = useUsual(props);
  const document = useBench(current);
  const tried = useBench(({ history }) => wasTried(history, pair)) || props.mode !== 'work';
  const beside = usual && besideUsual(props.pack, document, usual, props.size, pair);
  if (!beside) return null;
  if (!tried) return <p className={styles.hint}>Try this gap, and what is usual is shown.</p>;
  const offset = document.offsets[pair] ?? 0;
  return (
    <div className={styles.usual}>
      <Scale offset={offset} ends={endsOf(beside, prepareLine(props.pack).pairs[pair]!.builtIn, document.tracking)} />
      <details>
        <summary>What is usual here?</summary>
        <p>{usualWords(beside)}</p>
      </details>
    </div>
  );
}

type Ends = Record<'low' | 'halfLow' | 'halfHigh' | 'high', number>;

/**
 * The range as offsets of this pair, whole 1/1000 em: the total without the built-in spacing and the line's tracking.
 */
function endsOf({ range, tightness }: BesideUsual, builtIn: number, tracking: number): Ends {
  const offset = (total: number) => Math.round(total - builtIn - tracking + tightness);
  return {
    low: offset(range.low),
    halfLow: offset(range.halfLow),
    halfHigh: offset(range.halfHigh),
    high: offset(range.high),
  };
}

const WIDTH = 320;
const HEIGHT = 44;
const RULE = 24;

function Scale({ offset, ends }: { offset: number; ends: Ends }) {
  const reach = 50 * Math.max(2, Math.ceil(Math.max(...[offset, ...Object.values(ends)].map(Math.abs)) / 50));
  const step = reach > 400 ? 200 : reach > 150 ? 50 : 25;
  const ticks = Array.from(
    { length: 2 * Math.floor(reach / step) + 1 },
    (_, at) => (at - Math.floor(reach / step)) * step,
  );
  const x = (value: number) => Math.round((WIDTH / 2 + (value / reach) * (WIDTH / 2 - 16)) * 10) / 10;
  const { low, halfLow, halfHigh, high } = ends;
  return (
    <svg
      className={styles.usualScale}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={
        `Offset ${signed(offset)}. Usual for half of designers ${signed(halfLow)} to ${signed(halfHigh)}, ` +
        `for nine tenths ${signed(low)} to ${signed(high)}.`
      }
    >
      <path
        className={styles.usualRule}
        d={`M${x(-reach)} ${RULE}H${x(reach)}${ticks.map((at) => `M${x(at)} ${RULE}v5`).join('')}`}
      />
      {[-reach, 0, reach].map((at) => (
        <text key={at} x={x(at)} y={HEIGHT - 3} textAnchor="middle">
          {at === 0 ? '0' : numberText(at)}
        </text>
      ))}
      <path
        className={styles.usualEnds}
        d={`M${x(low)} ${RULE - 5}V${RULE}M${x(high)} ${RULE - 5}V${RULE}M${x(low)} ${RULE}H${x(high)}`}
      />
      <rect
        className={styles.usualHalf}
        x={x(halfLow)}
        y={RULE - 3}
        width={Math.max(2, x(halfHigh) - x(halfLow))}
        height={6}
      />
      <path className={styles.usualOffset} d={`M${x(offset)} ${RULE - 6}l-6 -10h12Z`} />
    </svg>
  );
}

/** Whether the person has moved this gap in this sitting, or found it already moved. */
function wasTried(history: History<SpacingDocument>, pair: number): boolean {
  const first = history.steps[0]?.offsets[pair];
  return (present(history).offsets[pair] ?? 0) !== 0 || history.steps.some(({ offsets }) => offsets[pair] !== first);
}
