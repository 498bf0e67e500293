'use client';
import { useEffect, useRef } from 'react';

export type Acts = Partial<Record<string, () => void>>;

/** These repeat while held down. Any other held key counts as one press, so that nothing is sent twice. */
const goesOn = new Set([
  'j',
  'f',
  'J',
  'F',
  'o',
  't',
  'O',
  'T',
  'ArrowLeft',
  'ArrowRight',
  'ArrowUp',
  'ArrowDown',
  'PageDown',
  'PageUp',
]);

/**
 * Runs `acts[key]` for a key pressed outside of fields and without a modifier. Off when the person has switched keys
 * off.
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
    // An attribute for tests: before it is set, keys do nothing.
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
