import { sameDocument, type SpacingDocument } from './document';

/** One change as it is sent: (clientId, seq) identifies it, so that sending it again doesn't store it twice. */
export type Change = { readonly clientId: string; readonly seq: number; readonly document: SpacingDocument };
export type SentChange = Change & { readonly baseVersion: number };
export type ServerState = { readonly version: number; readonly document: SpacingDocument };

/** Why nothing can be sent at the moment. */
type Trouble =
  | { readonly kind: 'none' }
  /** No answer: no network, or the server is down. */
  | { readonly kind: 'unreachable'; readonly attempts: number }
  | { readonly kind: 'signed out' }
  /** The server took the request and declined it; trying the same again is no use. */
  | { readonly kind: 'refused'; readonly reason: string };

/**
 * The state of one draft between this bench and the server. Pure; the caller sends, waits and stores.
 * A change in flight is sent again unchanged until it is answered, since its first sending may have arrived.
 */
export type Sync = {
  /** The newest state the server is known to hold. */
  readonly server: ServerState;
  /** The newest change made here that the server is not known to hold. */
  readonly unsent: Change | null;
  readonly inFlight: SentChange | null;
  /** What the server holds instead, when both sides moved; waits for the person's choice. */
  readonly conflict: ServerState | null;
  readonly trouble: Trouble;
};

export type SyncEvent =
  | { readonly kind: 'changed'; readonly change: Change }
  | { readonly kind: 'sending' }
  | { readonly kind: 'accepted'; readonly version: number }
  | { readonly kind: 'conflicted'; readonly theirs: ServerState }
  | { readonly kind: 'unreachable' }
  | { readonly kind: 'signed out' }
  | { readonly kind: 'refused'; readonly reason: string }
  /** News from the server or another window of this person: this is held now. */
  | { readonly kind: 'heard'; readonly server: ServerState }
  | { readonly kind: 'chose mine' }
  | { readonly kind: 'chose theirs' };

export function startSync(server: ServerState): Sync {
  return { server, unsent: null, inFlight: null, conflict: null, trouble: { kind: 'none' } };
}

/** The change to send now, or null when there is none to send or a choice is waited for. */
export function nextToSend(sync: Sync): SentChange | null {
  if (sync.conflict || sync.trouble.kind === 'refused') return null;
  if (sync.inFlight) return sync.inFlight;
  return sync.unsent && { ...sync.unsent, baseVersion: sync.server.version };
}

/** Nothing made here is missing on the server. */
export const isSaved = (sync: Sync): boolean => !sync.unsent && !sync.inFlight && !sync.conflict;

export function advance(sync: Sync, event: SyncEvent): Sync {
  switch (event.kind) {
    case 'changed':
      // A new change is a new chance after a refusal.
      return withUnsent(
        { ...sync, trouble: sync.trouble.kind === 'refused' ? { kind: 'none' } : sync.trouble },
        event.change,
      );
    case 'sending':
      return beginSending(sync);
    case 'accepted':
      return sync.inFlight ? accept(sync, { version: event.version, document: sync.inFlight.document }) : sync;
    case 'conflicted':
      return meet(sync, event.theirs);
    case 'heard':
      return hear(sync, event.server);
    case 'unreachable':
      return {
        ...sync,
        trouble: { kind: 'unreachable', attempts: sync.trouble.kind === 'unreachable' ? sync.trouble.attempts + 1 : 1 },
      };
    case 'signed out':
      return { ...sync, trouble: { kind: 'signed out' } };
    case 'refused':
      return {
        ...sync,
        inFlight: null,
        unsent: sync.unsent ?? sync.inFlight,
        trouble: { kind: 'refused', reason: event.reason },
      };
    case 'chose mine':
      return sync.conflict ? withUnsent({ ...sync, server: sync.conflict, conflict: null }, sync.unsent) : sync;
    case 'chose theirs':
      return sync.conflict ? { ...sync, server: sync.conflict, conflict: null, unsent: null, inFlight: null } : sync;
  }
}

function beginSending(sync: Sync): Sync {
  const change = nextToSend(sync);
  if (!change || change === sync.inFlight) return sync;
  return { ...sync, inFlight: change, unsent: null };
}

/** The server holds what was in flight. */
function accept(sync: Sync, server: ServerState): Sync {
  return withUnsent({ ...sync, server, inFlight: null, trouble: { kind: 'none' } }, sync.unsent);
}

/** Both sides moved, unless the server turns out to hold one of ours already. */
function meet(sync: Sync, theirs: ServerState): Sync {
  const reached: Sync = { ...sync, trouble: { kind: 'none' } };
  if (sync.inFlight && sameDocument(theirs.document, sync.inFlight.document)) return accept(reached, theirs);
  const mine = sync.unsent ?? sync.inFlight;
  if (!mine || sameDocument(theirs.document, mine.document))
    return { ...reached, server: theirs, inFlight: null, unsent: null, conflict: null };
  return { ...reached, inFlight: null, unsent: mine, conflict: theirs };
}

function hear(sync: Sync, server: ServerState): Sync {
  if (server.version <= sync.server.version) return sync;
  if (sync.conflict) return server.version > sync.conflict.version ? { ...sync, conflict: server } : sync;
  // While one of our own changes is being sent, the server's answer to it decides.
  if (sync.inFlight) return sync;
  return meet(sync, server);
}

/** Keeps a change as unsent, unless it says what the server has anyway and nothing else is on its way. */
function withUnsent(sync: Sync, change: Change | null): Sync {
  const needless = change && !sync.inFlight && !sync.conflict && sameDocument(change.document, sync.server.document);
  return { ...sync, unsent: needless ? null : change };
}
