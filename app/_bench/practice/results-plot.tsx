import { numberText } from '@/shared/text/number';
import type { EyeResult } from './results';
import styles from './practice.module.css';

const WIDTH = 560;
const HEIGHT = 150;
const kinds = { any: 'every kind', straight: 'straight sides', round: 'a round side', open: 'a slanted or open side' };

/** The sittings so far: a line that should sink over the term, and the same as a table. */
export function Results({ results }: { results: EyeResult[] }) {
  if (results.length === 0) return null;
  const most = Math.max(20, ...results.map(({ fault }) => fault));
  const x = (index: number) => (results.length === 1 ? WIDTH / 2 : 20 + (index * (WIDTH - 40)) / (results.length - 1));
  const y = (fault: number) => HEIGHT - 18 - (fault * (HEIGHT - 36)) / most;
  const points = results.map(({ fault }, index) => `${x(index).toFixed(1)} ${y(fault).toFixed(1)}`);
  return (
    <section aria-label="Your sittings" className={styles.results}>
      <h2>Your sittings</h2>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} className={styles.plot} aria-hidden="true">
        <path className={styles.plotFoot} d={`M0 ${HEIGHT - 18}H${WIDTH}`} />
        <path className={styles.plotLine} d={`M${points.join('L')}`} />
        {results.map(({ at, fault }, index) => <circle key={at} className={styles.plotPoint} cx={x(index)} cy={y(fault)} r="4" />)}
      </svg>
      <div className={styles.scroll}>
        <table className="table">
          <thead><tr><th scope="col">Day</th><th scope="col">Asked</th><th scope="col">Gaps with</th><th scope="col">Size, px</th><th scope="col">Smallest fault seen, 1/1000 em</th></tr></thead>
          <tbody>
            {results.map((result) => (
              <tr key={result.at}><td>{new Date(result.at).toLocaleDateString('en-GB', { day: 'numeric', month: 'long' })}</td><td>{result.task === 'gap off' ? 'which gap is off' : 'which is more even'}</td><td>{kinds[result.kind]}</td><td>{result.size}</td><td>{numberText(result.fault)}</td></tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
