import { useCallback, useEffect, useRef, useState } from 'react';
import * as z from 'zod/mini';
import { type PracticeResult, practiceResultSchema } from '@/shared/schemas/practice';
import { openDevice } from '../session/device';

const placeFor = (personKey: string) => `kerncrit/${encodeURIComponent(personKey)}/eye`;

/**
 * Results not sent to the server yet. Earlier versions gave them no key of their own: the instant they ended identifies
 * them.
 */
export function readWaiting(personKey: string): PracticeResult[] {
  try {
    const stored: unknown = JSON.parse(openDevice().store.get(placeFor(personKey)) ?? '[]');
    return Array.isArray(stored) ? stored.flatMap((one: unknown) => resultFrom(one) ?? []) : [];
  } catch {
    return [];
  }
}

/** Stores a result on this device before anything is sent. False: the device is full. */
function addWaiting(personKey: string, result: PracticeResult): boolean {
  return write(personKey, [...readWaiting(personKey), result]);
}

/** Removes what the server has; results added meanwhile, from another window too, stay. */
function dropWaiting(personKey: string, keys: readonly string[]): void {
  write(
    personKey,
    readWaiting(personKey).filter(({ requestKey }) => !keys.includes(requestKey)),
  );
}

/** All sittings without duplicates, oldest first. */
function allResults(stored: readonly PracticeResult[], waiting: readonly PracticeResult[]): PracticeResult[] {
  const byKey = new Map([...waiting, ...stored].map((result) => [result.requestKey, result]));
  return [...byKey.values()].sort((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : 0));
}

type Sent = { stored: string[] } | { failed: 'unreachable' | 'signed out' | 'refused' };

/** Sends what waits, a hundred at a time, so that one request is never too large. */
async function sendWaiting(address: string, waiting: readonly PracticeResult[]): Promise<Sent> {
  const results = waiting.slice(0, 100);
  try {
    const answer = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ results }),
    });
    if (answer.ok) return { stored: results.map(({ requestKey }) => requestKey) };
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
    // A full device gives way to unsent work first; the result is still shown, and sent.
    return false;
  }
}

export type ResultsState = 'saved' | 'sending' | Extract<Sent, { failed: string }>['failed'] | 'this device only';

/**
 * A person's sittings: stored on the device first, then on the server. Waiting results are sent when the page opens,
 * when a sitting ends, when the network returns, and on request; a result that arrives twice counts once.
 */
export function useResults(
  personKey: string,
  stored: PracticeResult[],
  save: string | null,
): { results: PracticeResult[]; state: ResultsState; add: (result: PracticeResult) => void; send: () => void } {
  const [server, setServer] = useState(stored);
  const [waiting, setWaiting] = useState(() => readWaiting(personKey));
  const [state, setState] = useState<ResultsState>(
    save === null ? 'this device only' : waiting.length > 0 ? 'sending' : 'saved',
  );
  const busy = useRef(false);
  const waits = useRef(waiting);

  const send = useCallback(
    () =>
      void (async () => {
        if (save === null || busy.current) return;
        busy.current = true;
        while (waits.current.length > 0) {
          setState('sending');
          const sent = await sendWaiting(save, waits.current);
          if ('failed' in sent) {
            busy.current = false;
            return setState(sent.failed);
          }
          const arrived = waits.current.filter(({ requestKey }) => sent.stored.includes(requestKey));
          dropWaiting(personKey, sent.stored);
          waits.current = waits.current.filter(({ requestKey }) => !sent.stored.includes(requestKey));
          setWaiting(waits.current);
          setServer((before) => [...before, ...arrived]);
        }
        busy.current = false;
        setState('saved');
      })(),
    [personKey, save],
  );

  useEffect(() => {
    send();
    window.addEventListener('online', send);
    return () => window.removeEventListener('online', send);
  }, [send]);

  return {
    results: allResults(server, waiting),
    state,
    send,
    add(result) {
      addWaiting(personKey, result);
      waits.current = [...waits.current, result];
      setWaiting(waits.current);
      send();
    },
  };
}
