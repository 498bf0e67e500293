import { useCallback, useEffect, useRef, useState } from 'react';
import type { PracticeResult } from '@/shared/schemas/practice';
import { addWaiting, allResults, dropWaiting, readWaiting, sendWaiting, type Sent } from './results';

export type Keeping = 'kept' | 'sending' | Extract<Sent, { failed: string }>['failed'] | 'this device only';

/**
 * A person's sittings: on the device first, then with the server. What waits is sent when the page opens, when a sitting
 * ends, when the network comes back, and on request; the same result arriving twice is one.
 */
export function useResults(
  personKey: string,
  kept: PracticeResult[],
  save: string | null,
): { results: PracticeResult[]; keeping: Keeping; add: (result: PracticeResult) => void; send: () => void } {
  const [server, setServer] = useState(kept);
  const [waiting, setWaiting] = useState(() => readWaiting(personKey));
  const [keeping, setKeeping] = useState<Keeping>(
    save === null ? 'this device only' : waiting.length > 0 ? 'sending' : 'kept',
  );
  const busy = useRef(false);
  const waits = useRef(waiting);

  const send = useCallback(
    () =>
      void (async () => {
        if (save === null || busy.current) return;
        busy.current = true;
        while (waits.current.length > 0) {
          setKeeping('sending');
          const sent = await sendWaiting(save, waits.current);
          if ('failed' in sent) {
            busy.current = false;
            return setKeeping(sent.failed);
          }
          const arrived = waits.current.filter(({ requestKey }) => sent.kept.includes(requestKey));
          dropWaiting(personKey, sent.kept);
          waits.current = waits.current.filter(({ requestKey }) => !sent.kept.includes(requestKey));
          setWaiting(waits.current);
          setServer((before) => [...before, ...arrived]);
        }
        busy.current = false;
        setKeeping('kept');
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
    keeping,
    send,
    add(result) {
      addWaiting(personKey, result);
      waits.current = [...waits.current, result];
      setWaiting(waits.current);
      send();
    },
  };
}
