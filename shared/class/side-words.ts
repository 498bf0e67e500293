import type { SideKind } from '@/shared/schemas/measure';

/** Kinds of side as a person reads them. */
export const sideWords: Record<SideKind, string> = {
  straight: 'straight',
  round: 'round',
  'slanted-in': 'slanted away upwards',
  'slanted-out': 'slanted away downwards',
  open: 'open',
  arched: 'arched',
};
