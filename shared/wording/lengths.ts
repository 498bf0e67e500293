/**
 * A length beside a known one in words: “about a third of the stem gap”.
 * @param length and `stem` in 1/1000 em.
 */
export function asShareOfStemGap(length: number, stem: number | null): string | null {
  if (stem === null || stem <= 0) return null;
  return `${shareWords(Math.abs(length) / stem)} the stem gap`;
}

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

/** A number for the eye: a real minus, at most `digits` decimals, no trailing zeros. */
export function typeset(value: number, digits = 0): string {
  let scale = 1;
  for (let i = 0; i < digits; i += 1) scale *= 10;
  const rounded = Math.floor(Math.abs(value) * scale + 0.5) / scale;
  return `${value < 0 && rounded > 0 ? '−' : ''}${rounded}`;
}

/** 12 → “12 thousandths of an em”, with the comparison first where there is one. */
export function thousandths(value: number): string {
  const number = typeset(Math.abs(value));
  return `${number} ${number === '1' ? 'thousandth' : 'thousandths'} of an em`;
}

/** “between T and o”, letters in curly quotes. */
export function betweenLetters(left: string, right: string): string {
  return `between “${left}” and “${right}”`;
}
