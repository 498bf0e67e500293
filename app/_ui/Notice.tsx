import type { ReactNode } from 'react';
import { classes } from './classes';

type Props = {
  children: ReactNode;
  title?: string;
  /** `caution` for law and policy, `warning` for what will be lost. */
  kind?: 'plain' | 'warning' | 'caution';
  /** Said aloud when it appears. Leave it off for what stands on the page from the start. */
  live?: 'polite' | 'assertive';
};

/** A remark that must not be overlooked. */
export function Notice({ children, title, kind = 'plain', live }: Props) {
  return (
    <div
      className={classes('notice', kind !== 'plain' && `notice-${kind}`)}
      role={live && (live === 'assertive' ? 'alert' : 'status')}
    >
      {title && (
        <p>
          <strong>{title}</strong>
        </p>
      )}
      {typeof children === 'string' ? <p>{children}</p> : children}
    </div>
  );
}
