import { OUTPUTS, addOutputs, chance, farPart, facePart, nearPart, squareplus, type Net, type Part } from './net';

/** A fit: nets whose outputs are averaged, and how far their steps are stretched so that ranges hold what they say. */
export type Fit = {
  nets: readonly Net[];
  /** For pairs that nearly every designer kerns, and for those that many leave alone. */
  stretch: { kerned: Stretch; mixed: Stretch };
};

/** Stretch of the steps to halfLow, low, halfHigh, high. */
export type Stretch = readonly [number, number, number, number];

/**
 * Up to this chance of being left alone a pair counts as one that nearly all designers kern; from there on as one of
 * the others.
 */
export const KERNED = { most: 0.1, none: 0.25 };

/** A range in reference gaps of the face. */
export type Shares = {
  low: number;
  halfLow: number;
  middle: number;
  mean: number;
  halfHigh: number;
  high: number;
  leftAlone: number;
};

/** A side as each net sees it, as the near one and as the far one. */
export type SideParts = { near: Part[]; far: Part[] };

/** Outputs are fitted in tenths of the reference gap. */
export const OUTPUT_SIZE = 0.1;

export function sideParts({ nets }: Fit, inputs: Float64Array): SideParts {
  return { near: nets.map((net) => nearPart(net, inputs)), far: nets.map((net) => farPart(net, inputs)) };
}

export function faceParts({ nets }: Fit, inputs: Float64Array): Part[] {
  return nets.map((net) => facePart(net, inputs));
}

/** The range of a pair and of its mirror image, which is the same pair: the outputs for both are averaged. */
export function sharesOf(fit: Fit, left: SideParts, right: SideParts, face: Part[], pair: Float64Array): Shares {
  const sums = new Float64Array(OUTPUTS);
  fit.nets.forEach((net, index) => {
    addOutputs(net, left.near[index]!, right.far[index]!, face[index]!, pair, sums);
    addOutputs(net, right.near[index]!, left.far[index]!, face[index]!, pair, sums);
  });
  const out = sums.map((sum) => sum / (2 * fit.nets.length));
  const step = (index: number) => squareplus(out[index]!) * OUTPUT_SIZE;
  const middle = out[1]! * OUTPUT_SIZE;
  const leftAlone = chance(out[6]!);
  const { kerned, mixed } = fit.stretch;
  const share = Math.min(1, Math.max(0, (leftAlone - KERNED.most) / (KERNED.none - KERNED.most)));
  const [a, b, c, d] = kerned.map((value, end) => value + share * (mixed[end]! - value)) as [
    number,
    number,
    number,
    number,
  ];
  const halfLow = middle - a * step(2),
    halfHigh = middle + c * step(4);
  return {
    low: halfLow - b * step(3),
    halfLow,
    middle,
    mean: out[0]! * OUTPUT_SIZE,
    halfHigh,
    high: halfHigh + d * step(5),
    leftAlone,
  };
}
