import type { ReactNode } from 'react';
import { classes } from './classes';

/** A state in a word or two, with a form beside it: open ring, half, full, wedge. Colour only repeats it. */
export function Status({ kind, children }: { kind: 'waiting' | 'going' | 'done' | 'late'; children: ReactNode }) {
  return <span className={classes('status', kind !== 'waiting' && `status-${kind}`)}>{children}</span>;
}
