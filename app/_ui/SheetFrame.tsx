import type { ReactNode } from 'react';
import type { Ground } from '@/shared/schemas/spacing';
import { classes } from './classes';

type Props = {
  /** The specimen's own ground; no theme changes it. */
  ground: Ground;
  children: ReactNode;
  caption?: ReactNode;
  /** No margin and no edge, for small sheets in lists. */
  bare?: boolean;
};

/** The sheet that a line stands on. Nothing goes behind the letters. */
export function SheetFrame({ ground, children, caption, bare }: Props) {
  const sheet = <div className={classes('sheet', `sheet-${ground}`, bare && 'sheet-bare')}>{children}</div>;
  if (!caption) return sheet;
  return (
    <figure className="sheet-figure">
      {sheet}
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
