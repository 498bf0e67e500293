import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { spacingOf } from '@/shared/editing/document';
import { withUnit } from '@/shared/text/number';
import { useSession } from '../context';
import { current } from '../session/state';
import styles from '../bench.module.css';

/** The line as outlines at its true size, there only while the page is printed. */
export function PrintProof() {
  const session = useSession();
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
  if (!printing) return null;
  const { pack, size, ground } = session.props;
  return (
    <div className={styles.printProof}>
      <SheetFrame scrolls ground={ground} caption={`${withUnit(size.value, size.unit)}, when it is printed at 100 %`}>
        <LineDrawing pack={pack} spacing={spacingOf(current(session.store.get()))} size={size} />
      </SheetFrame>
    </div>
  );
}
