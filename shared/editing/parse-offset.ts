import type { PerMille } from '@/shared/units';
import { signed } from '@/shared/text/number';
import { OFFSET_LIMIT } from './document';

export type ParsedOffset = { readonly value: PerMille } | { readonly error: string };

/**
 * A number as a person types it: `-12`, `−12`, `+12`, with spaces around. Whole thousandths within the limit.
 * The error quotes what was typed and says what to do.
 */
export function parseOffset(typed: string, least: PerMille = -OFFSET_LIMIT): ParsedOffset {
  const text = typed.trim().replace(/^[\u2212\u2013]/, '-');
  if (text === '') return { error: 'Type a whole number, for instance −12.' };
  if (/^[+-]?\d+[.,]\d+$/.test(text)) return { error: `“${typed}” is not whole: thousandths are not divided further.` };
  if (!/^[+-]?\d+$/.test(text)) return { error: `“${typed}” is not a number: type a whole one, for instance −12.` };
  const value = Number(text) + 0;
  if (value < least || value > OFFSET_LIMIT)
    return { error: `“${typed}” is out of reach: type a number from ${signed(least)} to ${OFFSET_LIMIT}.` };
  return { value };
}
