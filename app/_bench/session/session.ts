import { applyCommand, type Command } from '@/shared/editing/commands';
import { sameDocument, type SpacingDocument } from '@/shared/editing/document';
import {
  cancelGesture,
  endGesture,
  follow,
  present,
  record,
  redo,
  settled,
  undo,
  type History,
} from '@/shared/editing/history';
import {
  openJournal,
  readChange,
  readHistory,
  readServerState,
  rootOf,
  writeChange,
  writeSync,
  type JournalScope,
  type Written,
} from '@/shared/editing/journal';
import { advance, type ServerState, type Sync } from '@/shared/editing/sync';
import type { BenchProps } from '../props';
import { newKey, openDevice } from './device';
import { noLooks, type LookName } from '@/shared/line/looks';
import { readScreen } from './screen';
import { type Sender, startSender } from './sender';
import type { BenchState } from './state';
import { createStore, type Store } from './store';

export type BenchSession = {
  readonly props: BenchProps;
  readonly store: Store<BenchState>;
  /** One complete step. */
  edit(command: Command): void;
  /** One change of a gesture: `start` is relative to where the gesture began, `here` to where it is now. */
  follow(command: Command, from: 'start' | 'here'): void;
  endGesture(): void;
  cancelGesture(): void;
  undo(): void;
  redo(): void;
  /** `byHand` for a press that may become a drag. */
  choose(pair: number, extend?: boolean, byHand?: boolean): void;
  toggleLook(look: LookName): void;
  settleConflict(which: 'mine' | 'theirs'): void;
  /** Starts saving; returns a function that stops it. */
  start(): () => void;
};

/** The state of one open bench and everything that may change it. Browser only. */
export function openSession(props: BenchProps): BenchSession {
  const pairCount = props.pack.letters.length - 1;
  const scope: JournalScope = { personKey: props.personKey, draftId: props.draftId, pairCount };
  const { store: device, lasting } = openDevice();
  const clientId = newKey();
  const { written: found, ...opened } = openJournal(device, scope, serverHas(props));
  const keeps = writeSync(device, scope, opened.sync, null);
  const store = createStore<BenchState>({
    ...opened,
    chosen: { anchor: 0, head: 0 },
    byKeys: false,
    looks: noLooks,
    shown: 'mine',
    overlay: props.start ? 'start' : null,
    overlayMode: 'under',
    otherTurn: false,
    replayed: null,
    playing: false,
    screen: readScreen(),
    room: null,
    atTrue: false,
    zoom: props.accommodations?.workingView ?? 1,
    singleKeys: !props.accommodations?.singleKeysOff,
    deviceStores: lasting && keeps,
  });
  let sender: Sender | null = null;
  let written: Written | null = found;
  let seq = 0;

  /** Takes a new history; a finished change goes to the journal first and then to the server. */
  function take(history: History<SpacingDocument>, set = store.set): void {
    const before = store.get();
    if (history === before.history) return;
    if (sameDocument(settled(history), settled(before.history))) return set({ history });
    const change = { clientId, seq: (seq += 1), document: settled(history) };
    written = writeChange(device, scope, change, history, written);
    set({
      history,
      shown: 'mine',
      replayed: null,
      playing: false,
      deviceStores: written !== null && lasting,
      sync: advance(before.sync, { kind: 'changed', change }),
    });
    sender?.kick();
  }

  /** Changes written by another window of this person. */
  function hearOtherWindow(event: StorageEvent): void {
    const root = rootOf(scope);
    if (!event.key?.startsWith(root) || store.get().history.gesture) return;
    if (event.key === `${root}change`) {
      const change = readChange(device, scope);
      if (!change) return;
      const sync = advance(store.get().sync, { kind: 'changed', change });
      written = readHistory(device, scope, change);
      store.set({ history: written.history, sync });
      sender?.kick();
    } else if (event.key === `${root}settled` || event.key === `${root}kept`) {
      store.set({ sync: reopened() });
    }
  }

  const reopened = (): Sync =>
    openJournal(device, scope, readServerState(device, scope) ?? store.get().sync.server).sync;

  return {
    props,
    store,
    edit(command) {
      const reset = command.kind === 'reset' || command.kind === 'reset line';
      const meant = reset ? { ...command, to: props.began ?? undefined } : command;
      take(record(store.get().history, applyCommand(present(store.get().history), meant), sameDocument));
    },
    follow(command, from) {
      const { history } = store.get();
      const base = from === 'start' ? settled(history) : present(history);
      store.setByHand({
        history: follow(history, applyCommand(base, command)),
        shown: 'mine',
        replayed: null,
        playing: false,
      });
    },
    endGesture: () => take(endGesture(store.get().history, sameDocument), store.setByHand),
    cancelGesture: () => take(cancelGesture(store.get().history)),
    undo: () => take(undo(store.get().history)),
    redo: () => take(redo(store.get().history)),
    choose(pair, extend = false, byHand = false) {
      const head = Math.max(0, Math.min(pairCount - 1, pair));
      const { chosen } = store.get();
      if (head === chosen.head && (extend || chosen.anchor === head)) return;
      const change = { chosen: { anchor: extend ? chosen.anchor : head, head } };
      if (byHand) store.setByHand(change);
      else store.set(change);
    },
    toggleLook: (look) => store.set({ looks: { ...store.get().looks, [look]: !store.get().looks[look] } }),
    settleConflict(which) {
      const state = store.get();
      const theirs = state.sync.conflict;
      if (!theirs) return;
      const sync = advance(state.sync, { kind: which === 'mine' ? 'chose mine' : 'chose theirs' });
      store.set({ sync });
      const history = which === 'theirs' ? record(state.history, theirs.document, sameDocument) : state.history;
      writeSync(device, scope, sync, null);
      take(history);
      sender?.flush();
    },
    start() {
      sender = startSender({
        address: props.save,
        draftId: props.draftId,
        device,
        scope,
        sync: () => store.get().sync,
        // Messages about saving also wait for a pause, unless they need an answer.
        setSync: (sync) => (sync.conflict ? store.set({ sync }) : store.setByHand({ sync })),
        reopen: () => {
          // A question that is still unanswered survives reading the journal again.
          if (!store.get().sync.conflict) store.set({ sync: { ...reopened(), trouble: store.get().sync.trouble } });
        },
      });
      const leave = () => {
        take(endGesture(store.get().history, sameDocument));
        sender?.flush();
      };
      window.addEventListener('storage', hearOtherWindow);
      window.addEventListener('pagehide', leave);
      return () => {
        take(endGesture(store.get().history, sameDocument));
        window.removeEventListener('storage', hearOtherWindow);
        window.removeEventListener('pagehide', leave);
        sender?.stop();
        sender = null;
      };
    },
  };
}

function serverHas(props: BenchProps): ServerState {
  const { spacing, version, tolerances, reasons } = props;
  return {
    version,
    document: {
      tracking: spacing.tracking,
      offsets: spacing.offsets,
      ...(tolerances && { tolerances }),
      ...(reasons && { reasons }),
    },
  };
}
