import type { SentChange, SyncEvent } from '@/shared/editing/sync';
import { fromWire, saveAnswerSchema, toWire, type SaveRequest } from '@/shared/editing/wire';

const PATIENCE_MS = 15_000;

/** Sends one change and says what came of it. Never throws. */
export async function sendChange(address: string, draftId: string, change: SentChange): Promise<SyncEvent> {
  const body: SaveRequest = {
    draftId,
    baseVersion: change.baseVersion,
    clientId: change.clientId,
    seq: change.seq,
    ...toWire(change.document),
  };
  const giveUp = new AbortController();
  const timer = setTimeout(() => giveUp.abort(), PATIENCE_MS);
  try {
    const response = await fetch(address, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      body: JSON.stringify(body),
      credentials: 'same-origin',
      cache: 'no-store',
      // Lets the last change of a page that is being closed still go out.
      keepalive: true,
      signal: giveUp.signal,
    });
    return await outcomeOf(response);
  } catch {
    return { kind: 'unreachable' };
  } finally {
    clearTimeout(timer);
  }
}

async function outcomeOf(response: Response): Promise<SyncEvent> {
  // A redirect to a sign-in page also means that the session is over.
  if (response.status === 401 || response.redirected) return { kind: 'signed out' };
  const body = (await response.json().catch(() => null)) as { error?: { said?: unknown; body?: unknown } } | null;
  if (response.ok || response.status === 409) {
    const answer = saveAnswerSchema.safeParse(body?.error?.body ?? body);
    if (!answer.success) return { kind: 'unreachable' };
    if ('version' in answer.data) return { kind: 'accepted', version: answer.data.version };
    const { version, ...kept } = answer.data.conflict;
    return { kind: 'conflicted', theirs: { version, document: fromWire(kept) } };
  }
  const mayPass = response.status >= 500 || [408, 425, 429].includes(response.status);
  if (mayPass) return { kind: 'unreachable' };
  const said = body?.error?.said;
  return { kind: 'refused', reason: typeof said === 'string' ? said : `It answered ${response.status}.` };
}
