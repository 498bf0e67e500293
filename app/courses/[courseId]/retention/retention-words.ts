import { counted } from '@/shared/text/number';

/**
 * The last day of the retention, and how far away it is.
 *
 * @example retentionWords('2027-09-30', 6) // 'The work is kept until 2027-09-30, 6 days from today.'
 */
export function retentionWords(retainUntil: string, daysLeft: number): string {
  if (daysLeft < 0) return `The work was to be kept until ${retainUntil}, and that day is past.`;
  return `The work is kept until ${retainUntil}, ${daysLeft === 0 ? 'which is today' : `${counted(daysLeft, 'day')} from today`}.`;
}
