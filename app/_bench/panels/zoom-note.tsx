import { useEffect, useState } from 'react';
import { numberText } from '@/shared/text/number';
import { useBench, useSession } from '../context';
import styles from '../bench.module.css';

/** Says so when the page has been zoomed since it was opened, or since the screen was measured: the line is then not at its true size. */
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
  // Points that were measured are corrected for zoom; pixels are what they are.
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
      The page has been zoomed to {numberText((100 * density) / opened)} % since it was opened, and the line with it: it
      is not at its true size.
    </p>
  );
}
