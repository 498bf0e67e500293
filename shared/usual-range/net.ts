import { INPUTS, PAIR_INPUTS, SIDE_INPUTS } from './pair-inputs';

/**
 * A fitted net: inputs to `hidden` to `hidden` to seven outputs, squareplus between. Matrices by rows of their input.
 * Two nets are asked and their outputs averaged.
 */
export type Net = { hidden: number; layers: { weights: Float64Array; constants: Float64Array }[] };

/** Mean, middle, four steps out from the middle, and what the chance of being left alone is made from. */
export const OUTPUTS = 7;

/** What a net makes of one side of a letter as the near and as the far side of a pair, of a face, worked out once. */
export type Part = Float64Array;

export function nearPart(net: Net, side: Float64Array): Part {
  return partOf(net, side, 0);
}

export function farPart(net: Net, side: Float64Array): Part {
  return partOf(net, side, SIDE_INPUTS);
}

export function facePart(net: Net, inputs: Float64Array): Part {
  const part = partOf(net, inputs, 2 * SIDE_INPUTS + PAIR_INPUTS);
  const { constants } = net.layers[0]!;
  return part.map((value, unit) => value + constants[unit]!);
}

/** The seven outputs for a pair, added to `out`. */
export function addOutputs(net: Net, near: Part, far: Part, face: Part, pair: Float64Array, out: Float64Array): void {
  const { hidden, layers } = net;
  const [first, second, third] = layers as [Net['layers'][0], Net['layers'][0], Net['layers'][0]];
  const one = new Float64Array(hidden),
    two = second.constants.slice();
  const from = 2 * SIDE_INPUTS;
  for (let unit = 0; unit < hidden; unit += 1) one[unit] = near[unit]! + far[unit]! + face[unit]!;
  for (let i = 0; i < PAIR_INPUTS; i += 1) {
    const row = (from + i) * hidden;
    for (let unit = 0; unit < hidden; unit += 1) one[unit]! += pair[i]! * first.weights[row + unit]!;
  }
  for (let i = 0; i < hidden; i += 1) {
    const lit = squareplus(one[i]!);
    const row = i * hidden;
    for (let unit = 0; unit < hidden; unit += 1) two[unit]! += lit * second.weights[row + unit]!;
  }
  for (let k = 0; k < OUTPUTS; k += 1) out[k]! += third.constants[k]!;
  for (let i = 0; i < hidden; i += 1) {
    const lit = squareplus(two[i]!);
    for (let k = 0; k < OUTPUTS; k += 1) out[k]! += lit * third.weights[i * OUTPUTS + k]!;
  }
}

/** A smooth max(0, x) of plain arithmetic, so that Node and browsers agree to the digit. */
export function squareplus(x: number): number {
  return (x + Math.sqrt(x * x + 1)) / 2;
}

/** A smooth step from 0 to 1 of plain arithmetic. */
export function chance(x: number): number {
  return (1 + x / Math.sqrt(1 + x * x)) / 2;
}

function partOf({ hidden, layers }: Net, values: Float64Array, from: number): Part {
  const { weights } = layers[0]!;
  const part = new Float64Array(hidden);
  for (let i = 0; i < values.length; i += 1) {
    const row = (from + i) * hidden;
    for (let unit = 0; unit < hidden; unit += 1) part[unit]! += values[i]! * weights[row + unit]!;
  }
  return part;
}

/** How many numbers each layer of a net holds: its matrix and its constants. */
export function layerSizes(hidden: number): [number, number][] {
  return [
    [INPUTS * hidden, hidden],
    [hidden * hidden, hidden],
    [hidden * OUTPUTS, OUTPUTS],
  ];
}
