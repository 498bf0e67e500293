'use client';
import { useState } from 'react';
import { opposite } from '@/app/_line/inks';
import { lookTable, looksOn } from '@/app/_line/looks';
import { Button } from '@/app/_ui/Button';
import { noLooks, type LookName, type Looks } from '@/shared/line/looks';
import type { Ground } from '@/shared/schemas/spacing';
import { type Acts, useKeys } from './keys';
import style from './desk.module.css';

/**
 * Which ways of looking are on. After `ask` the next key chooses one; a second `v` switches them all off, and any other
 * key leaves them as they are.
 */
export function useLooks() {
  const [looks, setLooks] = useState<Looks>(noLooks);
  const [asking, setAsking] = useState(false);
  const toggle = (look: LookName) => setLooks((all) => ({ ...all, [look]: !all[look] }));
  const clear = () => setLooks(noLooks);
  return { looks, asking, toggle, clear, any: offered.some((look) => looks[look]), ask: setAsking };
}

export type UsedLooks = ReturnType<typeof useLooks>;

/** The bench's ways of looking, by the bench's own letters after `v`. */
const offered = looksOn('desk');

/**
 * The page's keys. While it waits for a way of looking, the next key chooses one, and any other key only ends the
 * waiting.
 */
export function useKeysAndLooks(acts: Acts, { asking, ask, toggle, clear }: UsedLooks, on: boolean): void {
  const then = (act?: () => void) => () => {
    ask(false);
    act?.();
  };
  const choosing: Acts = {
    v: then(clear),
    ...Object.fromEntries(offered.map((look) => [lookTable[look].key, then(() => toggle(look))])),
  };
  const answers = new Proxy(choosing, {
    get: (known, key) =>
      typeof key === 'string' && (key.length === 1 || key === 'Escape') ? (known[key] ?? then()) : undefined,
  });
  useKeys(asking ? answers : { ...acts, v: () => ask(true) }, on);
}

/** Each way of looking by its own letter, as on the bench. */
export const actsOfLooks = ({ toggle }: UsedLooks): Acts =>
  Object.fromEntries(offered.map((look) => [lookTable[look].key, () => toggle(look)]));

/** The ways of looking as words in a row, as on the bench. */
export function LooksRow({ looks }: { looks: UsedLooks }) {
  return (
    <div className={style.looksRow} role="group" aria-label="Ways of looking">
      {offered.map((look) => (
        <button
          key={look}
          type="button"
          className={style.look}
          aria-pressed={looks.looks[look]}
          aria-keyshortcuts={lookTable[look].key}
          title={lookTable[look].says}
          onClick={() => looks.toggle(look)}
        >
          {lookTable[look].name}
        </button>
      ))}
    </div>
  );
}

/**
 * The ways of looking as words that are switched on and off; they can be combined. The keys are v and the letter shown.
 */
export function LooksMenu({ looks }: { looks: UsedLooks }) {
  return (
    <details className="more" open={looks.asking || undefined}>
      <summary>
        Ways of looking <kbd aria-hidden="true">v</kbd>
      </summary>
      <div className="actions" role="group" aria-label="Ways of looking">
        {offered.map((look) => (
          <Button
            key={look}
            small
            aria-pressed={looks.looks[look]}
            aria-keyshortcuts={`v ${lookTable[look].key}`}
            title={lookTable[look].says}
            onClick={() => looks.toggle(look)}
          >
            {lookTable[look].name}{' '}
            <kbd className={style.keyOfLook} aria-hidden="true">
              {lookTable[look].key}
            </kbd>
          </Button>
        ))}
        {looks.any && (
          <Button small kind="text" onClick={looks.clear}>
            Plain again
          </Button>
        )}
      </div>
    </details>
  );
}

/** The ground a line is seen on under these looks. */
export const groundOf = (looks: Looks, ground: Ground): Ground => (looks.opposite ? opposite(ground) : ground);
