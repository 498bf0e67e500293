import type { ReactNode } from 'react';

/** Nothing here yet: why, and what to do next (`action` is a ButtonLink or a form). */
export function EmptyState({ title, children, action }: { title: string; children: ReactNode; action?: ReactNode }) {
  return (
    <div className="empty">
      <h2>{title}</h2>
      <p>{children}</p>
      {action}
    </div>
  );
}
