import { numberText, signed } from '@/shared/text/number';
import type { PairChange } from './pair-change';

/** How a pair has changed, in a sentence. @example 'Was −12, now −30 (18 tighter): nearer to the suggestion.' */
export function changeWords({ then, now, moved, toward }: PairChange): string {
  if (now === null) return `Was ${signed(then)}; the pair is no longer in the line.`;
  if (moved === 0) return `${signed(now)}, as it was${toward === 'met' ? ' and as was suggested' : ''}.`;
  const how = `${numberText(Math.abs(moved))} ${moved > 0 ? 'wider' : 'tighter'}`;
  return `Was ${signed(then)}, now ${signed(now)} (${how})${toward === null ? '' : `: ${inWords[toward]}`}.`;
}

/** Whether a pair has come nearer to the reference, in a few words; empty where there is none to tell. */
export const referenceWords = (reference: PairChange['toward']): string =>
  reference === null ? '' : besideReference[reference];

const besideReference = {
  met: 'within tolerance of the reference',
  nearer: 'nearer to the reference',
  same: 'as far from the reference as before',
  away: 'further from the reference',
} as const;

const inWords = {
  met: 'where it was suggested',
  nearer: 'nearer to the suggestion',
  same: 'as far from the suggestion as before',
  away: 'further from the suggestion',
} as const;
