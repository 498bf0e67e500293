import type { PairGroup } from '@/shared/schemas/measure';

/**
 * Which pairs can be compared with each other. A gap with a word space is no letter gap; punctuation follows other
 * rules than letters; figures of one width leave holes that the setter can't close; capitals in an all-capital line
 * have their own evenness.
 */
export function pairGroup(left: string, right: string, wordSpace: number, allCapitals: boolean): PairGroup {
  if (wordSpace > 0) return 'word-space';
  if (isPunctuation(left) || isPunctuation(right)) return 'punctuation';
  if (isFigure(left) || isFigure(right)) return 'figures';
  return allCapitals ? 'capitals' : 'letters';
}

/** Whether a line has capitals and no small letter. */
export function isAllCapitals(letters: string[]): boolean {
  return (
    letters.some(isCapital) &&
    !letters.some((letter) => letter !== letter.toUpperCase() && letter === letter.toLowerCase())
  );
}

function isCapital(letter: string): boolean {
  return letter === letter.toUpperCase() && letter !== letter.toLowerCase();
}

function isFigure(letter: string): boolean {
  return /^\p{Nd}/u.test(letter);
}

export function isPunctuation(letter: string): boolean {
  return /^[\p{P}\p{S}]/u.test(letter) && letter !== '&' && letter !== '@';
}
