import { isSaved } from '@/shared/editing/sync';
import { useBench, useBenchAtOnce, useSession } from '../context';
import type { BenchState } from '../session/state';
import { Conflict } from './conflict';
import styles from '../bench.module.css';

/** Says in words whether all is saved, and what to do when it is not. */
export function SaveState() {
  const { props } = useSession();
  const conflict = useBench((state) => state.sync.conflict);
  const kind = useBenchAtOnce(stateKind);
  const reason = useBench(({ sync }) => (sync.trouble.kind === 'refused' ? sync.trouble.reason : ''));
  const deviceKeeps = useBench((state) => state.deviceKeeps);
  if (conflict) return <Conflict theirs={conflict} />;
  return (
    <div className={styles.saveState} role="status" data-save={kind}>
      {props.save === null ? <p>Kept on this device only.</p> : <p>{words(kind, reason, deviceKeeps)}</p>}
      {kind === 'signed out' && props.save !== null && (
        <p>
          <a href={props.signIn ?? '/sign-in'} target="_blank" rel="noreferrer">
            Sign in again
          </a>{' '}
          (opens a new tab), then come back: the rest goes by itself.
        </p>
      )}
      {!deviceKeeps && kind !== 'saved' && (
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

/** That all is saved is said when the hand rests: said between two of its moves it would only flicker. The rest is said at once. */
function stateKind({ sync, history }: BenchState, atRest: boolean): Kind {
  if (sync.trouble.kind !== 'none' && !isSaved(sync)) return sync.trouble.kind;
  return isSaved(sync) && !history.gesture && atRest ? 'saved' : 'saving';
}

function words(kind: Kind, reason: string, deviceKeeps: boolean): string {
  const kept = deviceKeeps ? 'Your changes are kept on this device' : 'Your changes are on this page';
  switch (kind) {
    case 'saved':
      return 'All changes are saved.';
    case 'saving':
      return 'Saving …';
    case 'unreachable':
      return `No answer from the server. ${kept} and will be sent when it answers; you can go on.`;
    case 'signed out':
      return `Your session has ended. ${kept}; you can go on.`;
    case 'refused':
      return `The server did not take the last change: ${reason} ${kept}.`;
  }
}
