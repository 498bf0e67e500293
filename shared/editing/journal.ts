import { assertFits, sameDocument, type SpacingDocument } from './document';
import { record, startHistory, type History } from './history';
import { advance, startSync, type Change, type ServerState, type SentChange, type Sync } from './sync';

/** Anything that keeps strings by key on this device, at once. `set` throws when it is full. */
export type DeviceStore = {
  get(key: string): string | null;
  set(key: string, value: string): void;
  remove(key: string): void;
  keys(): string[];
};

export type JournalScope = { readonly personKey: string; readonly draftId: string; readonly pairCount: number };

/**
 * A history as the journal holds it: in blocks, each under the index of its first step. The last of `blocks` is where
 * those steps begin that are written with the change.
 */
export type Written = { readonly history: History<SpacingDocument>; readonly blocks: readonly number[] };

export type Opened = {
  readonly history: History<SpacingDocument>;
  readonly sync: Sync;
  readonly written: Written | null;
};

/** Steps that are written with the change before they become a block of their own: so many, or so long a text. */
const BLOCK = 32;
const BLOCK_TEXT = 8_000;

/**
 * The local journal of one draft: every change and every step of undo, written before anything is sent. There is one
 * for each person, draft and number of pairs. Each entry has one kind of writer, so that two windows never overwrite
 * each other: `change` and `step/…` belong to the window being worked in, `kept` and `flight` to the window that sends.
 */
export function openJournal(store: DeviceStore, scope: JournalScope, server: ServerState): Opened {
  const root = rootOf(scope);
  const last = readServerState(store, scope);
  const change = readChange(store, scope);
  const flight = readFlight(store, scope);
  const base = last && last.version > server.version ? last : server;
  if (!change) return { history: startHistory(base.document), sync: startSync(base), written: null };

  const written = readHistory(store, scope, change);
  const { history } = written;
  // Without a note of what the change was made on, only an untouched draft can be taken for it.
  const known = last ?? (server.version === 0 ? server : { version: -1, document: change.document });
  // With another change still on its way, going back to what the server had is a change as well.
  const saved =
    isAcknowledged(store, root, change) ||
    (flight === null && last !== null && sameDocument(change.document, last.document));
  const mine =
    saved || (flight && isSame(change, flight))
      ? null
      : { clientId: change.clientId, seq: change.seq, document: change.document };
  // A window that was closed may have sent it with its last breath, unheard of here: it goes first, under its own name,
  // and what is done next follows it. Left out, it could arrive after all and conflict with its own successor.
  const perhapsSent =
    flight === null && mine !== null && server.version === known.version
      ? { ...mine, baseVersion: known.version }
      : null;
  const before = { ...startSync(known), unsent: perhapsSent ? null : mine, inFlight: flight ?? perhapsSent };
  const sync = advance(before, { kind: 'heard', server });
  return {
    sync,
    written,
    history: mine || flight || sync.conflict ? history : record(history, sync.server.document, sameDocument),
  };
}

/**
 * Writes the newest change, and with it the steps of the last block: one entry, but for every 32nd step. `before` is
 * what the last writing gave back. Null = the device took nothing more.
 */
export function writeChange(
  store: DeviceStore,
  scope: JournalScope,
  change: Change,
  history: History<SpacingDocument>,
  before: Written | null,
): Written | null {
  const root = rootOf(scope);
  const { steps, cursor } = history;
  const same = before ? firstDifference(before.history.steps, steps) : 0;
  const reused = before?.blocks.filter((start) => start <= same) ?? [];
  const known = reused.length > 0 ? reused : [0];
  let blocks: readonly number[] = known;
  const write = () => {
    blocks = writeBlocks(store, root, steps, known);
    const at = blocks[blocks.length - 1]!;
    store.set(`${root}change`, JSON.stringify({ ...change, cursor, count: steps.length, at, steps: steps.slice(at) }));
  };
  const written = attempt(write) || (makeRoom(store, root) && attempt(write));
  if (!written && !keepOnlyChange(store, root, change)) return null;
  for (const stale of before?.blocks.slice(0, -1) ?? [])
    if (!blocks.includes(stale)) store.remove(`${root}step/${stale}`);
  return { history, blocks: written ? blocks : [steps.length] };
}

/**
 * Writes the steps after the last block as blocks, where they have become too many for the change. Gives back where
 * each block begins.
 */
function writeBlocks(
  store: DeviceStore,
  root: string,
  steps: readonly SpacingDocument[],
  known: readonly number[],
): readonly number[] {
  const at = known[known.length - 1]!;
  if (steps.length - at < BLOCK && JSON.stringify(steps.slice(at)).length < BLOCK_TEXT) return known;
  const blocks = [...known];
  for (let start = at; start < steps.length; start += BLOCK) {
    const block = steps.slice(start, start + BLOCK);
    store.set(`${root}step/${start}`, JSON.stringify(block));
    blocks.push(start + block.length);
  }
  return blocks;
}

/** Writes what the server is known to hold, what is on its way, and which change of ours that settles. */
export function writeSync(store: DeviceStore, scope: JournalScope, sync: Sync, settles: Change | null): boolean {
  const root = rootOf(scope);
  return attempt(() => {
    if (sync.inFlight) store.set(`${root}flight`, JSON.stringify(sync.inFlight));
    else if (store.get(`${root}flight`) !== null) store.remove(`${root}flight`);
    const state = JSON.stringify(sync.server);
    // Sending changes nothing in it, and a window that hears of it reads the whole journal again.
    if (store.get(`${root}kept`) !== state) store.set(`${root}kept`, state);
    if (settles) store.set(`${root}settled`, `${settles.clientId}/${settles.seq}`);
  });
}

/** Prefix of every key of one draft; what follows names the entry. */
export function rootOf(scope: JournalScope): string {
  return `kerncrit/${encodeURIComponent(scope.personKey)}/${encodeURIComponent(scope.draftId)}/${scope.pairCount}/`;
}

/** `steps` are those from `at` on. Journals of before have neither: each of their steps is alone under its index. */
export type WrittenChange = Change & {
  readonly cursor: number;
  readonly count: number;
  readonly at?: number;
  readonly steps?: readonly SpacingDocument[];
};

export function readChange(store: DeviceStore, scope: JournalScope): WrittenChange | null {
  return read<WrittenChange>(store, `${rootOf(scope)}change`, ({ document, steps = [] }) =>
    [document, ...steps].forEach((step) => assertFits(step, scope.pairCount)),
  );
}

export function readServerState(store: DeviceStore, scope: JournalScope): ServerState | null {
  return read<ServerState>(store, `${rootOf(scope)}kept`, (state) => assertFits(state.document, scope.pairCount));
}

function readFlight(store: DeviceStore, scope: JournalScope): SentChange | null {
  return read<SentChange>(store, `${rootOf(scope)}flight`, (sent) => assertFits(sent.document, scope.pairCount));
}

/** The steps as written; when some are missing, the newest change is the only step. */
export function readHistory(store: DeviceStore, scope: JournalScope, change: WrittenChange): Written {
  const alone: Written = { history: startHistory(change.document), blocks: [0] };
  const { count, cursor, at = count, steps: last = [] } = change;
  const steps: SpacingDocument[] = [];
  const blocks: number[] = [];
  while (steps.length < at) {
    const block = readBlock(store, scope, steps.length);
    if (!block) return alone;
    blocks.push(steps.length);
    steps.push(...block);
  }
  if (steps.length !== at || at + last.length !== count) return alone;
  steps.push(...last);
  const step = steps[cursor];
  return step && sameDocument(step, change.document)
    ? { history: { steps, cursor, gesture: null }, blocks: [...blocks, at] }
    : alone;
}

function readBlock(store: DeviceStore, scope: JournalScope, start: number): readonly SpacingDocument[] | null {
  const listed = (block: SpacingDocument | SpacingDocument[]) => (Array.isArray(block) ? block : [block]);
  const block = read<SpacingDocument | SpacingDocument[]>(store, `${rootOf(scope)}step/${start}`, (found) =>
    listed(found).forEach((step) => assertFits(step, scope.pairCount)),
  );
  return block && listed(block).length > 0 ? listed(block) : null;
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
  const spare = store
    .keys()
    .filter((key) => key.startsWith('kerncrit/') && key.includes('/step/') && !key.startsWith(root));
  spare.forEach((key) => store.remove(key));
  return spare.length > 0;
}

/** Last resort on a full device: give up this draft's undo steps to keep its newest change. */
function keepOnlyChange(store: DeviceStore, root: string, change: Change): boolean {
  store
    .keys()
    .filter((key) => key.startsWith(`${root}step/`))
    .forEach((key) => store.remove(key));
  return attempt(() => store.set(`${root}change`, JSON.stringify({ ...change, cursor: 0, count: 0 })));
}

function firstDifference(a: readonly SpacingDocument[], b: readonly SpacingDocument[]): number {
  let index = 0;
  while (index < a.length && index < b.length && a[index] === b[index]) index += 1;
  return index;
}
