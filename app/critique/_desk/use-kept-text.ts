'use client';
import { useCallback, useSyncExternalStore } from 'react';
import { openDevice } from '@/app/_bench/session/device';

const changed = 'kerncrit-kept-text';

/** A text that survives a reload, a lost session or a closed window until it is cleared. Kept on this device only. */
export function useKeptText(personKey: string, name: string): [string, (text: string) => void] {
  const place = `kerncrit/${encodeURIComponent(personKey)}/${name}`;
  const text = useSyncExternalStore(
    subscribe,
    () => openDevice().store.get(place) ?? '',
    () => '',
  );
  const keep = useCallback(
    (next: string) => {
      const { store } = openDevice();
      if (next === '') store.remove(place);
      else store.set(place, next);
      window.dispatchEvent(new Event(changed));
    },
    [place],
  );
  return [text, keep];
}

function subscribe(tell: () => void): () => void {
  window.addEventListener(changed, tell);
  return () => window.removeEventListener(changed, tell);
}
