import type { Yardstick } from '@/shared/schemas/finding';
import type { Size } from '@/shared/schemas/spacing';
import { numberText, thinSpace, withUnit } from '@/shared/text/number';

/** A length without its sign. @example perMilleEm(-12) // '12/1000 em', with a space at which no line ends */
export function perMilleEm(value: number): string {
  return `${numberText(Math.abs(value))}/1000${thinSpace}em`;
}

/** `AV`, or `A V` where a word space is between them. */
export function pairName([left, right]: readonly [string, string], spaced = false): string {
  return `${left}${spaced ? ' ' : ''}${right}`;
}

/** `48 px` */
export function sizeText({ value, unit }: Size): string {
  return withUnit(value, unit, 1);
}

/**
 * A length beside one that can be seen.
 * @example asShareOf(58, stems of 175) // 'about a third of the white between two stems'
 */
export function asShareOf(length: number, beside: Yardstick): string | null {
  if (beside === null || beside.length <= 0) return null;
  return `${shareWords(Math.abs(length) / beside.length)} ${SEEN[beside.of]}`;
}

const SEEN: Record<NonNullable<Yardstick>['of'], string> = {
  stems: 'the white between two stems',
  counter: 'the white inside an n',
};

const SHARES: [number, string][] = [
  [0.03, 'less than a thirtieth of'],
  [0.07, 'about a twentieth of'],
  [0.115, 'about a tenth of'],
  [0.16, 'about a seventh of'],
  [0.225, 'about a fifth of'],
  [0.29, 'about a quarter of'],
  [0.41, 'about a third of'],
  [0.58, 'about half of'],
  [0.71, 'about two thirds of'],
  [0.87, 'about three quarters of'],
  [1.15, 'about as much as'],
  [1.35, 'about one and a quarter times'],
  [1.75, 'about one and a half times'],
  [2.4, 'about twice'],
];

/** 0.34 → “about a third of”, 2.1 → “about twice”; to be followed by what it is a share of. */
export function shareWords(ratio: number): string {
  for (const [upTo, words] of SHARES) if (ratio < upTo) return words;
  return `about ${Math.floor(ratio + 0.5)} times`;
}

/** `1st`, `2nd`, `11th`, `23rd` */
export function ordinal(number: number): string {
  const tens = number % 100,
    ones = number % 10;
  const ending = tens > 10 && tens < 14 ? 'th' : ones === 1 ? 'st' : ones === 2 ? 'nd' : ones === 3 ? 'rd' : 'th';
  return `${number}${ending}`;
}
