'use client';
import { useEffect, useRef } from 'react';
import type { FormState } from '@/shared/forms/form-state';

/** What went wrong, in one list that takes the focus; each line leads to its field. Says also when all went well. */
export function FormError({ state }: { state: FormState }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.outcome === 'failed') box.current?.focus();
  }, [state]);

  if (state.outcome === 'done') {
    return state.message ? <div className="notice" role="status">{state.message}</div> : null;
  }
  if (state.outcome === 'fresh') return null;
  const errors = Object.entries(state.errors);
  return (
    <div className="notice notice-warning" role="alert" tabIndex={-1} ref={box}>
      <p><strong>{state.message ?? 'Not done yet. What you typed is kept.'}</strong></p>
      {errors.length > 0 && (
        <ul>
          {errors.map(([name, message]) => (
            <li key={name}><a href={`#field-${name}`}>{message}</a></li>
          ))}
        </ul>
      )}
    </div>
  );
}
