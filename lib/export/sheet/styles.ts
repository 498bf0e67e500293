import type { Style } from './faces';

/** The scale of type on a sheet, in points. */
export const styles = {
  title: { family: 'text', weight: 600, size: 21, leading: 25 },
  lead: { family: 'text', weight: 400, size: 10.5, leading: 14.5 },
  quote: { family: 'text', weight: 400, italic: true, size: 10.5, leading: 14.5 },
  note: { family: 'text', weight: 400, size: 9.25, leading: 12 },
  noteName: { family: 'plain', weight: 600, size: 8.5, leading: 12 },
  small: { family: 'plain', weight: 400, size: 8, leading: 11 },
  smallStrong: { family: 'plain', weight: 600, size: 8, leading: 11 },
  heading: { family: 'plain', weight: 600, size: 10, leading: 14 },
  cell: { family: 'plain', weight: 400, size: 8.5, leading: 11.5 },
  cellStrong: { family: 'plain', weight: 600, size: 8.5, leading: 11.5 },
} as const satisfies Record<string, Style>;

/** Inks; on white all are at least 4.5:1 (WCAG 2.2, 1.4.3). */
export const inks = { ink: '#1f1c1a', quiet: '#5a5550', tie: '#7a3d1c', rule: '#8c857c' } as const;
