import type { ReactNode } from 'react';
import { buttonClasses } from './Button';

/** More on request, without a script. */
export function Disclosure({ summary, open, children }: { summary: ReactNode; open?: boolean; children: ReactNode }) {
  return (
    <details className="more" open={open}>
      <summary>{summary}</summary>
      {children}
    </details>
  );
}

/** A few further actions behind a button; children are links, buttons or small forms. */
export function Menu({ label, children }: { label: ReactNode; children: ReactNode }) {
  return (
    <details className="menu">
      <summary className={buttonClasses({})}>{label}</summary>
      <div className="menu-list">{children}</div>
    </details>
  );
}
