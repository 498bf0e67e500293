import type { ReactNode } from 'react';
import type { Ground } from '@/shared/schemas/spacing';
import { classes } from './classes';

type Props = {
  /** The line's own ground, independent of the theme. */
  ground: Ground;
  children: ReactNode;
  caption?: ReactNode;
  /** No margin and no edge, for small sheets in lists. */
  bare?: boolean;
  /** For a line at its true size: it may be wider than the screen, and then scrolls, also by keyboard. */
  scrolls?: boolean;
};

/** The sheet under a line. Nothing is drawn behind the letters. */
export function SheetFrame({ ground, children, caption, bare, scrolls }: Props) {
  const scrolling = scrolls
    ? { tabIndex: 0, role: 'group', 'aria-label': 'The sheet; it may be wider than the screen' }
    : {};
  const sheet = (
    <div className={classes('sheet', `sheet-${ground}`, bare && 'sheet-bare')} {...scrolling}>
      {children}
    </div>
  );
  if (!caption) return sheet;
  return (
    <figure className="sheet-figure">
      {sheet}
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
