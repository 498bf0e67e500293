'use client';
import { useState } from 'react';
import { firstSingleKeys } from '@/app/_bench/hands/keys';
import { lookWords, noLooks, type Look, type Looks } from '@/app/_line/looks';
import { useKeys, type Acts } from './keys';

const names = Object.keys(lookWords) as Look[];

/** The bench's ways of looking, by the bench's own letters after `v`. */
export const lookKeys: readonly { look: Look; key: string; name: string; says: string }[] = names.map((look) => ({
  look,
  key: firstSingleKeys[`look ${look}`],
  ...lookWords[look],
}));

/** Which ways of looking are on. After `ask` the next key chooses one; `v` once more puts them all away, and any other key leaves them. */
export function useLooks() {
  const [looks, setLooks] = useState<Looks>(noLooks);
  const [asking, setAsking] = useState(false);
  const toggle = (look: Look) => setLooks((all) => ({ ...all, [look]: !all[look] }));
  const clear = () => setLooks(noLooks);
  return {
    looks,
    asking,
    toggle,
    clear,
    any: names.some((look) => looks[look]),
    ask: setAsking,
  };
}

/** The page's keys. While a way of looking is asked for, the next key chooses one, and all others only take the question back. */
export function useKeysAndLooks(acts: Acts, { asking, ask, toggle, clear }: LooksInHand, on: boolean): void {
  const then = (act?: () => void) => () => {
    ask(false);
    act?.();
  };
  const choosing: Acts = {
    v: then(clear),
    ...Object.fromEntries(lookKeys.map(({ key, look }) => [key, then(() => toggle(look))])),
  };
  const answers = new Proxy(choosing, {
    get: (known, key) =>
      typeof key === 'string' && (key.length === 1 || key === 'Escape') ? (known[key] ?? then()) : undefined,
  });
  useKeys(asking ? answers : { ...acts, v: () => ask(true) }, on);
}

export type LooksInHand = ReturnType<typeof useLooks>;
