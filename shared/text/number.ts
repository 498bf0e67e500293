/** U+2212, the minus sign; a hyphen is shorter and sits lower. */
const minusSign = '\u2212';
/**
 * U+202F between a number and its unit; SI Brochure 9, 5.4.3 asks for a space, setters make it thin. It is as wide as
 * U+2009 on screen (half a word space where the face has no glyph for it), and no line ends at it.
 */
export const thinSpace = '\u202F';

/**
 * A number as it is set: a real minus, no exponent, at most `decimals` places, no trailing zeros.
 * @example numberText(-12) // '−12'
 * @throws RangeError that quotes a value which is not finite, or 1e21 and above.
 */
export function numberText(value: number, decimals = 0): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e21) throw new RangeError(`Cannot set ${value} as a number.`);
  const fixed = Math.abs(value).toFixed(decimals);
  const digits = decimals > 0 ? fixed.replace(/\.?0+$/, '') : fixed;
  return value < 0 && Number(digits) !== 0 ? minusSign + digits : digits;
}

/** Thousandths of an em, without a unit. @example perMille(-12) // '−12' */
export function perMille(value: number): string {
  return numberText(value);
}

/** With its sign: '+8', '−12', '0'. */
export function signed(value: number, decimals = 0): string {
  const text = numberText(value, decimals);
  return value > 0 && text !== '0' ? `+${text}` : text;
}

/**
 * A number and its unit, with a thin space that no line ends at; English sets none before a percent sign.
 * @example withUnit(48, 'px') // '48 px'
 * @example withUnit(69.5, '%', 1) // '69.5%'
 */
export function withUnit(value: number, unit: string, decimals = 0): string {
  return `${numberText(value, decimals)}${unit === '%' ? '' : thinSpace}${unit}`;
}

/** A sentence of the measure for the screen: its thin spaces (U+2009) hold number and unit together. */
export function heldTogether(sentence: string): string {
  return sentence.replaceAll('\u2009', thinSpace);
}

/** '1 letter', '3 letters', 'no letters'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count === 0 ? 'no' : numberText(count)} ${count === 1 ? one : many}`;
}
