import { LineDrawing } from '@/app/_line/LineDrawing';
import { SheetFrame } from '@/app/_ui/SheetFrame';
import { type SpacingDocument, spacingOf } from '@/shared/editing/document';
import { isSaved, type ServerState } from '@/shared/editing/sync';
import { counted } from '@/shared/text/number';
import styles from '../bench.module.css';
import { useBench, useBenchAtOnce, useSession } from '../context';
import { type BenchState, current } from '../session/state';

/** Says in words whether everything is saved, and what to do when it isn't. */
export function SaveState() {
  const { props } = useSession();
  const conflict = useBench((state) => state.sync.conflict);
  const kind = useBenchAtOnce(stateKind);
  const reason = useBench(({ sync }) => (sync.trouble.kind === 'refused' ? sync.trouble.reason : ''));
  const deviceStores = useBench((state) => state.deviceStores);
  if (conflict) return <Conflict theirs={conflict} />;
  return (
    <div className={styles.saveState} role="status" data-save={kind}>
      {props.save === null ? <p>Kept on this device only.</p> : <p>{words(kind, reason, deviceStores)}</p>}
      {kind === 'signed out' && props.save !== null && (
        <p>
          <a href={props.signIn ?? '/sign-in'} target="_blank" rel="noreferrer">
            Sign in again
          </a>{' '}
          (opens a new tab), then come back: the rest goes by itself.
        </p>
      )}
      {!deviceStores && kind !== 'saved' && (
        <p>
          <strong>
            This device has no room to keep changes. Leave this page open until it says that all is saved.
          </strong>
        </p>
      )}
    </div>
  );
}

type Kind = 'saved' | 'saving' | 'unreachable' | 'signed out' | 'refused';

/**
 * “Saved” is shown once a drag pauses: between its moves the message would only flicker. Other messages are shown at
 * once.
 */
function stateKind({ sync, history }: BenchState, atRest: boolean): Kind {
  if (sync.trouble.kind !== 'none' && !isSaved(sync)) return sync.trouble.kind;
  return isSaved(sync) && !history.gesture && atRest ? 'saved' : 'saving';
}

function words(kind: Kind, reason: string, deviceStores: boolean): string {
  const stored = deviceStores ? 'Your changes are kept on this device' : 'Your changes are on this page';
  switch (kind) {
    case 'saved':
      return 'All changes are saved.';
    case 'saving':
      return 'Saving …';
    case 'unreachable':
      return `No answer from the server. ${stored} and will be sent when it answers; you can go on.`;
    case 'signed out':
      return `Your session has ended. ${stored}; you can go on.`;
    case 'refused':
      return `The server refused the last change: ${reason} ${stored}.`;
  }
}

/** The line was changed here and elsewhere. Both are shown; nothing is sent until one is chosen. */
function Conflict({ theirs }: { theirs: ServerState }) {
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
          action="Continue with this one"
          choose={() => session.settleConflict('mine')}
        />
        <Version
          title="In the other place"
          document={theirs.document}
          action="Continue with the other"
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
