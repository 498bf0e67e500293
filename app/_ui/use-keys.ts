'use client';
import { useEffect, useRef } from 'react';

export type Acts = Partial<Record<string, () => void>>;

/**
 * Held down, these go on. Of all others a held key is one press, so that nothing is sent twice by a key held too long.
 */
const goesOn = new Set(['.', ',', '>', '<', 'o', 't', 'O', 'T']);

/**
 * Runs `acts[key]` for a key pressed outside of fields, where no other key is held with it. Off when the person says
 * so.
 */
export function useKeys(acts: Acts, on: boolean): void {
  const latest = useRef(acts);
  useEffect(() => {
    latest.current = acts;
  });
  useEffect(() => {
    if (!on) return;
    const press = (event: KeyboardEvent) => {
      if (
        event.ctrlKey ||
        event.metaKey ||
        event.altKey ||
        event.defaultPrevented ||
        event.isComposing ||
        isField(event.target)
      )
        return;
      const act = latest.current[event.key];
      if (!act) return;
      event.preventDefault();
      if (!event.repeat || goesOn.has(event.key)) act();
    };
    document.addEventListener('keydown', press);
    // Marked on the page for tests: before this, keys do nothing.
    document.body.dataset.keys = 'on';
    return () => {
      document.removeEventListener('keydown', press);
      delete document.body.dataset.keys;
    };
  }, [on]);
}

function isField(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return (
    target.isContentEditable ||
    target.matches('textarea, select, input:not([type=radio], [type=checkbox])') ||
    target.closest('dialog[open]') !== null
  );
}
