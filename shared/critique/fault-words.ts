import type { Fault } from '@/shared/schemas/note';

/** A fault in a few words, as it follows its letters. @example 'VO, more than the tolerance wider' */
export const faultWords: Record<Exclude<Fault, ''>, string> = {
  wide: 'more than the tolerance wider',
  tight: 'more than the tolerance tighter',
  left: 'the letter in the middle too far left',
  right: 'the letter in the middle too far right',
  touching: 'touching',
};
