import * as z from 'zod/mini';
import { practiceResultSchema, type PracticeResult } from '@/shared/schemas/practice';
import { openDevice } from '../session/device';

const placeFor = (personKey: string) => `kerncrit/${encodeURIComponent(personKey)}/eye`;

/** Results that only this device has so far. Those of earlier days had no key of their own: the instant they ended names them. */
export function readWaiting(personKey: string): PracticeResult[] {
  try {
    const kept: unknown = JSON.parse(openDevice().store.get(placeFor(personKey)) ?? '[]');
    return Array.isArray(kept) ? kept.flatMap((one: unknown) => resultFrom(one) ?? []) : [];
  } catch {
    return [];
  }
}

/** Keeps a result on this device before anything is sent. False: the device took nothing more. */
export function addWaiting(personKey: string, result: PracticeResult): boolean {
  return write(personKey, [...readWaiting(personKey), result]);
}

/** Takes away what the server has; what came in meanwhile, from another window too, stays. */
export function dropWaiting(personKey: string, keys: readonly string[]): void {
  write(
    personKey,
    readWaiting(personKey).filter(({ requestKey }) => !keys.includes(requestKey)),
  );
}

/** All sittings, each once, oldest first. */
export function allResults(kept: readonly PracticeResult[], waiting: readonly PracticeResult[]): PracticeResult[] {
  const byKey = new Map([...waiting, ...kept].map((result) => [result.requestKey, result]));
  return [...byKey.values()].sort((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : 0));
}

export type Sent = { kept: string[] } | { failed: 'unreachable' | 'signed out' | 'refused' };

/** Sends what waits, a hundred at a time, so that one request is never too large. */
export async function sendWaiting(address: string, waiting: readonly PracticeResult[]): Promise<Sent> {
  const results = waiting.slice(0, 100);
  try {
    const answer = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ results }),
    });
    if (answer.ok) return { kept: results.map(({ requestKey }) => requestKey) };
    return { failed: answer.status === 401 ? 'signed out' : answer.status < 500 ? 'refused' : 'unreachable' };
  } catch {
    return { failed: 'unreachable' };
  }
}

function resultFrom(one: unknown): PracticeResult | null {
  if (typeof one !== 'object' || one === null) return null;
  const { at } = one as { at?: unknown };
  const read = z.safeParse(practiceResultSchema, { requestKey: `of-${String(at)}`, trials: 0, turns: [], ...one });
  return read.success ? read.data : null;
}

function write(personKey: string, results: PracticeResult[]): boolean {
  try {
    openDevice().store.set(placeFor(personKey), JSON.stringify(results));
    return true;
  } catch {
    // A full device keeps work first; the result is still shown, and sent.
    return false;
  }
}
