import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { spacingOf, type SpacingDocument } from '@/shared/editing/document';
import type { Kept } from '@/shared/editing/sync';
import { counted } from '@/shared/text/number';
import { useBench, useSession } from '../context';
import { current } from '../session/state';
import styles from '../bench.module.css';

/** The line was changed here and in another place. Both are shown; nothing is sent until one is chosen. */
export function Conflict({ theirs }: { theirs: Kept }) {
  const session = useSession();
  const mine = useBench(current);
  const differing = mine.offsets.filter((offset, pair) => offset !== theirs.document.offsets[pair]).length;
  return (
    <section className={styles.conflict} role="alert" aria-label="Two versions">
      <h2>This line was also changed in another place</h2>
      <p>
        The two differ in {counted(differing, 'gap')}
        {mine.tracking !== theirs.document.tracking ? ' and in tracking' : ''}. Choose the one to go on with. Undo
        brings the other back.
      </p>
      <div className={styles.twoVersions}>
        <Version
          title="On this page"
          document={mine}
          action="Go on with this one"
          choose={() => session.settleConflict('mine')}
        />
        <Version
          title="In the other place"
          document={theirs.document}
          action="Go on with the other"
          choose={() => session.settleConflict('theirs')}
        />
      </div>
    </section>
  );
}

function Version({
  title,
  document,
  action,
  choose,
}: {
  title: string;
  document: SpacingDocument;
  action: string;
  choose: () => void;
}) {
  const { pack, ground } = useSession().props;
  return (
    <div className={styles.version}>
      <h3>{title}</h3>
      <SheetFrame ground={ground}>
        <LineDrawing pack={pack} spacing={spacingOf(document)} />
      </SheetFrame>
      <button type="button" className="button" onClick={choose}>
        {action}
      </button>
    </div>
  );
}
