import { applyCommand, type Command } from '@/shared/editing/commands';
import { sameDocument, type SpacingDocument } from '@/shared/editing/document';
import { present, record, undo, type History } from '@/shared/editing/history';
import {
  openJournal,
  writeChange,
  writeSync,
  type DeviceStore,
  type JournalScope,
  type Written,
} from '@/shared/editing/journal';
import { advance, nextToSend, type ServerState, type Sync } from '@/shared/editing/sync';

/** A device store in memory, with a size in characters that it will not go over. */
export function toyStore(limit = Infinity): DeviceStore & { entries: Map<string, string> } {
  const entries = new Map<string, string>();
  const size = () => [...entries].reduce((sum, [key, value]) => sum + key.length + value.length, 0);
  return {
    entries,
    get: (key) => entries.get(key) ?? null,
    set(key, value) {
      const old = entries.get(key);
      entries.set(key, value);
      if (size() <= limit) return;
      if (old === undefined) entries.delete(key);
      else entries.set(key, old);
      throw new Error('full');
    },
    remove: (key) => void entries.delete(key),
    keys: () => [...entries.keys()],
  };
}

/** A server that keeps one draft by the rules of the wire: compare and swap, and each change once. */
export function toyServer(document: SpacingDocument) {
  let kept: ServerState = { version: 0, document };
  const seen = new Map<string, number>();
  return {
    kept: () => kept,
    put(change: {
      clientId: string;
      seq: number;
      baseVersion: number;
      document: SpacingDocument;
    }): { version: number } | { conflict: ServerState } {
      const name = `${change.clientId}/${change.seq}`;
      const before = seen.get(name);
      if (before !== undefined) return { version: before };
      if (change.baseVersion !== kept.version) return { conflict: kept };
      kept = { version: kept.version + 1, document: change.document };
      seen.set(name, kept.version);
      return { version: kept.version };
    },
  };
}
export type ToyServer = ReturnType<typeof toyServer>;

/** One open bench without a screen: the journal and the sync as the real one drives them. */
export function toyBench(store: DeviceStore, scope: JournalScope, server: ToyServer, clientId: string) {
  const opened = openJournal(store, scope, server.kept());
  let history: History<SpacingDocument> = opened.history;
  let sync: Sync = opened.sync;
  let written: Written | null = opened.written;
  let seq = 0;
  writeSync(store, scope, sync, null);

  const note = (next: History<SpacingDocument>) => {
    seq += 1;
    const change = { clientId, seq, document: present(next) };
    history = next;
    written = writeChange(store, scope, change, history, written);
    sync = advance(sync, { kind: 'changed', change });
  };
  return {
    sync: () => sync,
    history: () => history,
    edit: (command: Command) => {
      const next = record(history, applyCommand(present(history), command), sameDocument);
      if (next !== history) note(next);
    },
    undo(times: number) {
      const next = Array.from({ length: times }).reduce<typeof history>(undo, history);
      if (next !== history) note(next);
    },
    /** `arrives` and `answered` say how far the request and its answer get. */
    send(arrives: boolean, answered: boolean) {
      sync = advance(sync, { kind: 'sending' });
      const sent = nextToSend(sync);
      if (!sent) return;
      writeSync(store, scope, sync, null);
      const answer = arrives ? server.put(sent) : null;
      if (!answer || !answered) sync = advance(sync, { kind: 'unreachable' });
      else if ('version' in answer) sync = advance(sync, { kind: 'accepted', version: answer.version });
      else sync = advance(sync, { kind: 'conflicted', theirs: answer.conflict });
      writeSync(store, scope, sync, answer && answered && 'version' in answer ? sent : null);
    },
    choose(which: 'mine' | 'theirs') {
      const theirs = sync.conflict;
      if (!theirs) return;
      sync = advance(sync, { kind: which === 'mine' ? 'chose mine' : 'chose theirs' });
      if (which === 'theirs') history = record(history, theirs.document, sameDocument);
      note(history);
      writeSync(store, scope, sync, null);
    },
  };
}
