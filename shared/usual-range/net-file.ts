import { layerSizes, type Net } from './net';

/** A fit as it is stored: whole numbers of 16 bits in base64, a row of each matrix sharing one size. */
export type NetFile = { hidden: number; layers: { rows: number[]; weights: string; constants: number[] }[] };

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Whole numbers from base64, low byte first. Decoded here because what browsers and Node offer for it differs. */
function fromBase64(text: string): Int16Array {
  const values = new Map([...DIGITS].map((digit, value) => [digit, value]));
  const bytes: number[] = [];
  let held = 0,
    bits = 0;
  for (const digit of text) {
    const value = values.get(digit);
    if (value === undefined) break;
    held = held * 64 + value;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    const size = [1, 2, 4, 8, 16, 32, 64][bits]!;
    bytes.push(Math.floor(held / size));
    held %= size;
  }
  return Int16Array.from({ length: Math.floor(bytes.length / 2) }, (_, i) => {
    const whole = bytes[2 * i]! + 256 * bytes[2 * i + 1]!;
    return whole < 32_768 ? whole : whole - 65_536;
  });
}

export function readNet({ hidden, layers }: NetFile): Net {
  const sizes = layerSizes(hidden);
  return {
    hidden,
    layers: layers.map(({ rows, weights, constants }, index) => {
      const wholes = fromBase64(weights);
      const [count, across] = sizes[index]!;
      if (wholes.length !== count || constants.length !== across || rows.length * across !== count)
        throw new RangeError(`Layer ${index} of the usual range holds ${wholes.length} numbers instead of ${count}.`);
      return {
        weights: Float64Array.from(wholes, (whole, i) => (whole * rows[Math.floor(i / across)]!) / 32_767),
        constants: Float64Array.from(constants),
      };
    }),
  };
}
