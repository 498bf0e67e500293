import { assertFits, sameDocument, type SpacingDocument } from './document';
import { record, startHistory, type History } from './history';
import { advance, startSync, type Change, type Kept, type SentChange, type Sync } from './sync';

/** Anything that keeps strings by key on this device, at once. `set` throws when it is full. */
export type DeviceStore = {
  get(key: string): string | null;
  set(key: string, value: string): void;
  remove(key: string): void;
  keys(): string[];
};

export type JournalScope = { readonly personKey: string; readonly draftId: string; readonly pairCount: number };

export type Opened = { readonly history: History<SpacingDocument>; readonly sync: Sync };

/**
 * The local journal of one draft: every change and every step of undo, written before anything is sent.
 * It is kept apart by person, draft and number of pairs. Each entry has one kind of writer, so that two
 * windows never overwrite each other: `change` and `step/…` belong to the window being worked in,
 * `kept` and `flight` to the window that sends.
 */
export function openJournal(store: DeviceStore, scope: JournalScope, server: Kept): Opened {
  const root = rootOf(scope);
  const last = readKept(store, scope);
  const change = readChange(store, scope);
  const flight = readFlight(store, scope);
  const base = last && last.version > server.version ? last : server;
  if (!change) return { history: startHistory(base.document), sync: startSync(base) };

  const history = readHistory(store, scope, change);
  // Without a note of what the change was made on, only an untouched draft can be taken for it.
  const known = last ?? (server.version === 0 ? server : { version: -1, document: change.document });
  // With another change still on its way, going back to what the server had is a change as well.
  const saved = isAcknowledged(store, root, change) || (flight === null && last !== null && sameDocument(change.document, last.document));
  const mine = saved || (flight && isSame(change, flight)) ? null : { clientId: change.clientId, seq: change.seq, document: change.document };
  // A window that was closed may have sent it with its last breath, unheard of here: it goes first, under its own name, and
  // what is done next follows it. Left out, it could arrive after all and stand against its own successor.
  const perhapsSent = flight === null && mine !== null && server.version === known.version ? { ...mine, baseVersion: known.version } : null;
  const before = { ...startSync(known), unsent: perhapsSent ? null : mine, inFlight: flight ?? perhapsSent };
  const sync = advance(before, { kind: 'heard', kept: server });
  return { sync, history: mine || flight || sync.conflict ? history : record(history, sync.kept.document, sameDocument) };
}

/** Writes the newest change and the steps that are new since `before`. False = the device took nothing more. */
export function writeChange(
  store: DeviceStore,
  scope: JournalScope,
  change: Change,
  history: History<SpacingDocument>,
  before: History<SpacingDocument> | null,
): boolean {
  const root = rootOf(scope);
  const fresh = before ? firstDifference(before.steps, history.steps) : 0;
  const write = () => {
    history.steps.slice(fresh).forEach((step, index) => store.set(`${root}step/${fresh + index}`, JSON.stringify(step)));
    store.set(`${root}change`, JSON.stringify({ ...change, cursor: history.cursor, count: history.steps.length }));
  };
  const written = attempt(write) || (makeRoom(store, root) && attempt(write)) || keepOnlyChange(store, root, change);
  for (let stale = history.steps.length; stale < (before?.steps.length ?? 0); stale += 1) store.remove(`${root}step/${stale}`);
  return written;
}

/** Writes what the server is known to hold, what is on its way, and which change of ours that settles. */
export function writeSync(store: DeviceStore, scope: JournalScope, sync: Sync, settles: Change | null): boolean {
  const root = rootOf(scope);
  return attempt(() => {
    if (sync.inFlight) store.set(`${root}flight`, JSON.stringify(sync.inFlight));
    else if (store.get(`${root}flight`) !== null) store.remove(`${root}flight`);
    store.set(`${root}kept`, JSON.stringify(sync.kept));
    if (settles) store.set(`${root}settled`, `${settles.clientId}/${settles.seq}`);
  });
}

/** Prefix of every key of one draft; what follows names the entry. */
export function rootOf(scope: JournalScope): string {
  return `kerncrit/${encodeURIComponent(scope.personKey)}/${encodeURIComponent(scope.draftId)}/${scope.pairCount}/`;
}

export type WrittenChange = Change & { readonly cursor: number; readonly count: number };

export function readChange(store: DeviceStore, scope: JournalScope): WrittenChange | null {
  return read<WrittenChange>(store, `${rootOf(scope)}change`, (change) => assertFits(change.document, scope.pairCount));
}

export function readKept(store: DeviceStore, scope: JournalScope): Kept | null {
  return read<Kept>(store, `${rootOf(scope)}kept`, (kept) => assertFits(kept.document, scope.pairCount));
}

function readFlight(store: DeviceStore, scope: JournalScope): SentChange | null {
  return read<SentChange>(store, `${rootOf(scope)}flight`, (sent) => assertFits(sent.document, scope.pairCount));
}

/** The steps as written; when some are missing, the newest change stands alone. */
export function readHistory(store: DeviceStore, scope: JournalScope, change: WrittenChange): History<SpacingDocument> {
  const steps: SpacingDocument[] = [];
  for (let index = 0; index < change.count; index += 1) {
    const step = read<SpacingDocument>(store, `${rootOf(scope)}step/${index}`, (document) => assertFits(document, scope.pairCount));
    if (!step) return startHistory(change.document);
    steps.push(step);
  }
  const standing = steps[change.cursor];
  return standing && sameDocument(standing, change.document) ? { steps, cursor: change.cursor, gesture: null } : startHistory(change.document);
}

function isAcknowledged(store: DeviceStore, root: string, change: Change): boolean {
  return store.get(`${root}settled`) === `${change.clientId}/${change.seq}`;
}

const isSame = (a: Change, b: Change): boolean => a.clientId === b.clientId && a.seq === b.seq;

/** An entry that cannot be read or does not fit is treated as missing; it is left where it is. */
function read<T>(store: DeviceStore, key: string, check: (value: T) => void): T | null {
  const text = store.get(key);
  if (text === null) return null;
  try {
    const value = JSON.parse(text) as T;
    check(value);
    return value;
  } catch {
    return null;
  }
}

function attempt(write: () => void): boolean {
  try {
    write();
    return true;
  } catch {
    return false;
  }
}

/** Drops the undo steps of other drafts; their changes stay. True when something was dropped. */
function makeRoom(store: DeviceStore, root: string): boolean {
  const spare = store.keys().filter((key) => key.startsWith('kerncrit/') && key.includes('/step/') && !key.startsWith(root));
  spare.forEach((key) => store.remove(key));
  return spare.length > 0;
}

/** Last resort on a full device: give up this draft's undo steps to keep its newest change. */
function keepOnlyChange(store: DeviceStore, root: string, change: Change): boolean {
  store.keys().filter((key) => key.startsWith(`${root}step/`)).forEach((key) => store.remove(key));
  return attempt(() => store.set(`${root}change`, JSON.stringify({ ...change, cursor: 0, count: 0 })));
}

function firstDifference(a: readonly SpacingDocument[], b: readonly SpacingDocument[]): number {
  let index = 0;
  while (index < a.length && index < b.length && a[index] === b[index]) index += 1;
  return index;
}
