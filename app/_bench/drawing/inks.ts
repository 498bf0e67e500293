import type { Ground } from '@/shared/schemas/spacing';

/** Colours of the sheet, as CSS text. They belong to the ground and never to the theme. */
export type Inks = { readonly ink: string; readonly quiet: string; readonly rule: string; readonly warm: string; readonly cool: string; readonly mark: string; readonly note: string };

const known = new Map<Ground, Inks>();

/** Read once per ground from an element on such a sheet. */
export function inksOf(element: Element, ground: Ground): Inks {
  const kept = known.get(ground);
  if (kept) return kept;
  const style = getComputedStyle(element);
  const token = (name: string) => style.getPropertyValue(`--sheet-${name}`).trim() || style.color;
  const inks = { ink: style.color, quiet: token('quiet'), rule: token('rule'), warm: token('warm'), cool: token('cool'), mark: token('mark'), note: token('note') };
  known.set(ground, inks);
  return inks;
}

export const opposite = (ground: Ground): Ground => (ground === 'light' ? 'dark' : 'light');
