import { useMemo, useState } from 'react';
import { openDevice } from './session/device';
import { firstSingleKeys, type SingleKeyAct } from './hands/keys';

type Keys = Record<SingleKeyAct, string>;

/** The person's own single keys, kept on this device; and which act each key stands for. */
export function useSingleKeys(personKey: string): {
  keys: Keys;
  byKey: ReadonlyMap<string, SingleKeyAct>;
  change: (keys: Keys) => void;
} {
  const place = `kerncrit/${encodeURIComponent(personKey)}/keys`;
  const [keys, setKeys] = useState<Keys>(() => readKeys(place));
  const byKey = useMemo(() => new Map((Object.keys(keys) as SingleKeyAct[]).map((act) => [keys[act], act])), [keys]);
  return {
    keys,
    byKey,
    change(next) {
      setKeys(next);
      try {
        openDevice().store.set(place, JSON.stringify(next));
      } catch {
        // A full device keeps work first; the keys last as long as the page.
      }
    },
  };
}

function readKeys(place: string): Keys {
  try {
    const kept = JSON.parse(openDevice().store.get(place) ?? '{}') as Partial<Record<string, unknown>>;
    const acts = Object.keys(firstSingleKeys) as SingleKeyAct[];
    return Object.fromEntries(
      acts.map((act) => [act, typeof kept[act] === 'string' ? kept[act] : firstSingleKeys[act]]),
    ) as Keys;
  } catch {
    return firstSingleKeys;
  }
}
