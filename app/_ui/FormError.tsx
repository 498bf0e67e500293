'use client';
import { useEffect, useRef, type MouseEvent } from 'react';
import type { FormState } from '@/shared/schemas/form-state';

/** What went wrong, in one list that takes the focus; each line leads to its field. Says also when all went well. */
export function FormError({ state }: { state: FormState }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (state.status === 'failed') box.current?.focus();
  }, [state]);

  if (state.status === 'done') {
    return state.said ? (
      <div className="notice" role="status">
        {state.said}
      </div>
    ) : null;
  }
  if (state.status === 'new') return null;
  const errors = Object.entries(state.fields);
  return (
    <div className="notice notice-warning" role="alert" tabIndex={-1} ref={box}>
      <p>
        <strong>{errors.length > 0 ? 'Not done yet. What you typed is kept.' : state.said}</strong>
      </p>
      {errors.length > 0 && (
        <ul>
          {errors.map(([name, message]) => (
            <li key={name}>
              <a href={`#field-${name}`} onClick={(event) => lead(event, name)}>
                {message}
              </a>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** To the field itself, or to the one it is a part of (`lines.0` stands in `lines`). */
function lead(event: MouseEvent, name: string): void {
  for (let part = name; part !== ''; part = part.slice(0, Math.max(0, part.lastIndexOf('.')))) {
    const field = document.getElementById(`field-${part}`);
    if (!field) continue;
    event.preventDefault();
    field.scrollIntoView({ block: 'center' });
    field.focus();
    return;
  }
}
