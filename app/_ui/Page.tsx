import type { ReactNode } from 'react';
import { classes } from './classes';

/**
 * The main column: 60–75 characters, `wide` for tables and sheets, `full` for the bench and the wall.
 * Every route renders exactly one.
 */
export function Page({ width = 'text', children }: { width?: 'text' | 'wide' | 'full'; children: ReactNode }) {
  return (
    <main
      id="main"
      tabIndex={-1}
      className={classes('page', width === 'wide' && 'page-wide', width === 'full' && 'page-wide page-full')}
    >
      {children}
    </main>
  );
}
