import { useMemo, useState } from 'react';
import { lookTable } from '@/app/_line/looks';
import type { LookName } from '@/shared/line/looks';
import { openDevice } from '../session/device';

/** The three steps of a nudge, in 1/1000 em. */
export const STEPS = { fine: 1, middle: 5, coarse: 20 } as const;

/** What a single key does. A key either chooses or changes, never both. */
export type SingleKeyAct =
  | 'gap before'
  | 'gap after'
  | 'show built-in'
  | 'true size'
  | 'larger'
  | 'smaller'
  | 'show keys'
  | 'watch again'
  | `look ${LookName}`;

/** The default single keys; each can be changed, and all can be switched off. */
export const firstSingleKeys: Record<SingleKeyAct, string> = {
  'gap before': 'f',
  'gap after': 'j',
  'show built-in': 'b',
  'true size': 'u',
  larger: 'k',
  smaller: 'd',
  ...lookKeys(),
  'watch again': 'a',
  'show keys': '?',
};

function lookKeys(): Record<`look ${LookName}`, string> {
  const entries = (Object.keys(lookTable) as LookName[]).map((look) => [`look ${look}`, lookTable[look].key]);
  return Object.fromEntries(entries) as Record<`look ${LookName}`, string>;
}

/** Keys that are not characters; they work even when single keys are off. */
export const steadyKeys: readonly { keys: string[]; says: string }[] = [
  { keys: ['Enter'], says: 'the next gap; with Shift the one before' },
  { keys: ['Home', 'End'], says: 'the first gap, the last gap' },
  { keys: ['Up', 'Down'], says: 'one thousandth wider, closer' },
  { keys: ['Right', 'Left'], says: 'five wider, closer' },
  { keys: ['Page Up', 'Page Down'], says: 'twenty wider, closer' },
  { keys: ['0–9', '−'], says: 'type a number, then Enter' },
  { keys: ['Delete'], says: 'back to built-in' },
  { keys: ['Ctrl Z', 'Ctrl Shift Z'], says: 'undo, redo' },
  { keys: ['Esc'], says: 'let go of a drag; else down to the numbers' },
];

/** The fixed keys of a replay, while its sheet has the focus. */
export const replayKeys: readonly { keys: string[]; says: string }[] = [
  { keys: ['Enter'], says: 'the next step; with Shift the one before' },
  { keys: ['Home', 'End'], says: 'the beginning, the last step' },
];

/** How much a key nudges; 0 for a key that doesn't. Up and right open, as on any slider. */
export function nudgeOf(key: string): number {
  switch (key) {
    case 'ArrowUp':
      return STEPS.fine;
    case 'ArrowDown':
      return -STEPS.fine;
    case 'ArrowRight':
      return STEPS.middle;
    case 'ArrowLeft':
      return -STEPS.middle;
    case 'PageUp':
      return STEPS.coarse;
    case 'PageDown':
      return -STEPS.coarse;
    default:
      return 0;
  }
}

type Keys = Record<SingleKeyAct, string>;

/** The person's own single keys, kept on this device, with the act each key stands for. */
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
        // A full device gives way to unsent work first; then the keys last only as long as the page.
      }
    },
  };
}

function readKeys(place: string): Keys {
  try {
    const stored = JSON.parse(openDevice().store.get(place) ?? '{}') as Partial<Record<string, unknown>>;
    const acts = Object.keys(firstSingleKeys) as SingleKeyAct[];
    return Object.fromEntries(
      acts.map((act) => [act, typeof stored[act] === 'string' ? stored[act] : firstSingleKeys[act]]),
    ) as Keys;
  } catch {
    return firstSingleKeys;
  }
}
