import { useEffect, useId, useState } from 'react';
import { numberText, withUnit } from '@/shared/text/number';
import styles from '../bench.module.css';
import { useBench, useSession } from '../context';
import { CARD, keepScreen, NOMINAL_PX_PER_MM, pxPerMmNow } from '../session/screen';

/** Makes points and millimetres true on this screen, by comparing it with a card of known width. */
export function ScreenPanel() {
  const session = useSession();
  const id = useId();
  const stored = useBench((state) => state.screen);
  const [pxPerMm, setPxPerMm] = useState(() => pxPerMmNow(stored, window.devicePixelRatio));
  // A phone is narrower than a card is wide: there the card is held upright.
  const [card] = useState(() =>
    window.innerWidth < 560 ? { width: CARD.height, height: CARD.width, how: ' upright' } : { ...CARD, how: '' },
  );
  const take = (next: number | null) => {
    const measure = next === null ? null : { pxPerMm: next, density: window.devicePixelRatio };
    keepScreen(measure);
    session.store.set({ screen: measure });
    setPxPerMm(next ?? NOMINAL_PX_PER_MM);
  };
  return (
    <section className={styles.screen} aria-label="True size on this screen">
      <h2>True size on this screen</h2>
      <p>
        Hold a bank card or a student card{card.how} to the screen and move the slider until the frame is as wide as the
        card. With a ruler: the frame is {withUnit(card.width, 'mm', 1)} wide.
      </p>
      <div className={styles.cardHolder}>
        <div
          aria-hidden="true"
          className={styles.card}
          style={{ width: card.width * pxPerMm, height: card.height * pxPerMm, borderRadius: 3.18 * pxPerMm }}
        />
      </div>
      <label htmlFor={id}>Width of the frame</label>
      <input
        id={id}
        type="range"
        min={2}
        max={10}
        step={0.005}
        value={pxPerMm}
        aria-valuetext={`${numberText(card.width * pxPerMm)} pixels`}
        onChange={(event) => setPxPerMm(Number(event.currentTarget.value))}
      />
      <p className={styles.row}>
        <button type="button" className="button button-small" onClick={() => take(pxPerMm)}>
          The frame fits the card
        </button>
        {stored && (
          <button type="button" className="button button-text button-small" onClick={() => take(null)}>
            Forget it
          </button>
        )}
        <span role="status" className={styles.hint}>
          {stored ? 'Measured: points are true on this screen.' : 'Not measured: points are as the browser takes them.'}
        </span>
      </p>
    </section>
  );
}

/**
 * A warning when the page has been zoomed since it was opened, or since the screen was measured: the line is then not
 * at its true size.
 */
export function ZoomNote() {
  const { size } = useSession().props;
  const screen = useBench((state) => state.screen);
  const [opened] = useState(() => window.devicePixelRatio);
  const [density, setDensity] = useState(opened);
  useEffect(() => {
    const look = () => setDensity(window.devicePixelRatio);
    window.addEventListener('resize', look);
    return () => window.removeEventListener('resize', look);
  }, []);
  // Sizes in measured points are corrected for zoom; sizes in pixels are left alone.
  if (size.unit === 'pt' && screen) {
    return Math.abs(density / screen.density - 1) < 0.01 ? null : (
      <p className={styles.hint}>
        The zoom, or the screen, is another one than when it was measured. On the same screen points are still true; on
        another one measure again.
      </p>
    );
  }
  if (Math.abs(density / opened - 1) < 0.01) return null;
  return (
    <p className={styles.hint}>
      The page has been zoomed to {numberText((100 * density) / opened)}% since it was opened, and the line with it: it
      is not at its true size.
    </p>
  );
}
