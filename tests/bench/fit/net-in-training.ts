import { readFileSync } from 'node:fs';
import wabt from 'wabt';
import { seededRandom } from '../agreement/random';

/** A net as it is fitted: rows of inputs to `hidden` to `hidden` to `outputs`, squareplus between. */
export type NetShape = { inputs: number; hidden: number; outputs: number };

/** Weights as plain numbers: each layer's matrix by rows of its input, then its constants. */
export type NetNumbers = NetShape & { layers: { weights: Float32Array; constants: Float32Array }[] };

type Multiply = (a: number, rowA: number, stepA: number, b: number, c: number, m: number, k: number, n: number) => void;

const BATCH = 512;

/**
 * Fits a small net by gradient descent (Adam with decoupled decay) in batches of 512. Products of matrices run in a
 * WebAssembly kernel (multiply.wat), everything else in plain loops.
 */
export async function makeTrainer(shape: NetShape, seed: number) {
  const { inputs, hidden, outputs } = shape;
  if (inputs % 4 || hidden % 8 || outputs % 8)
    throw new RangeError('Inputs go in fours, hidden and outputs in eights.');
  const memory = new WebAssembly.Memory({ initial: 256 });
  let at = 0;
  const take = (count: number): Float32Array => {
    const block = new Float32Array(memory.buffer, at, count);
    at += Math.ceil(count / 4) * 16;
    return block;
  };
  const multiply = await kernel(memory);
  const widths: [number, number][] = [
    [inputs, hidden],
    [hidden, hidden],
    [hidden, outputs],
  ];
  const layers = widths.map(([from, to]) => ({
    from,
    to,
    weights: take(from * to),
    turned: take(from * to),
    slopes: take(from * to),
    constants: take(to),
    constantSlopes: take(to),
    sums: take(BATCH * to),
    out: take(BATCH * to),
    back: take(BATCH * to),
  }));
  const rows = take(BATCH * inputs);
  const random = seededRandom(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  layers.forEach(({ from, weights }, index) => {
    for (let i = 0; i < weights.length; i += 1) weights[i] = (normal() / Math.sqrt(from)) * (index === 2 ? 0.3 : 1);
  });
  const moments = layers
    .flatMap(({ weights, constants }) => [weights, constants])
    .map((block) => ({
      first: new Float32Array(block.length),
      second: new Float32Array(block.length),
    }));
  let turn = 0;

  /** Fills `out` of each layer from `rows`. */
  function forward(): Float32Array {
    let from = rows;
    layers.forEach((layer, index) => {
      for (let i = 0; i < BATCH; i += 1) layer.sums.set(layer.constants, i * layer.to);
      const width = index === 0 ? inputs : hidden;
      multiply(from.byteOffset, width * 4, 4, layer.weights.byteOffset, layer.sums.byteOffset, BATCH, width, layer.to);
      if (index < 2) squareplus(layer.sums, layer.out);
      else layer.out.set(layer.sums);
      from = layer.out;
    });
    return layers[2]!.out;
  }

  /** One step from the slopes of the loss by the outputs, given in `outputSlopes`. */
  function step(rate: number, decay: number): void {
    for (let index = 2; index >= 0; index -= 1) {
      const layer = layers[index]!;
      const before = index === 0 ? rows : layers[index - 1]!.out;
      layer.slopes.fill(0);
      multiply(
        before.byteOffset,
        4,
        layer.from * 4,
        layer.back.byteOffset,
        layer.slopes.byteOffset,
        layer.from,
        BATCH,
        layer.to,
      );
      layer.constantSlopes.fill(0);
      for (let i = 0, k = 0; i < layer.back.length; i += 1) {
        layer.constantSlopes[k]! += layer.back[i]!;
        k = k + 1 === layer.to ? 0 : k + 1;
      }
      if (index === 0) break;
      const under = layers[index - 1]!;
      for (let i = 0; i < layer.from; i += 1)
        for (let k = 0; k < layer.to; k += 1) layer.turned[k * layer.from + i] = layer.weights[i * layer.to + k]!;
      under.back.fill(0);
      multiply(
        layer.back.byteOffset,
        layer.to * 4,
        4,
        layer.turned.byteOffset,
        under.back.byteOffset,
        BATCH,
        layer.to,
        layer.from,
      );
      steepen(under.sums, under.back);
    }
    turn += 1;
    const warm = Math.sqrt(1 - 0.999 ** turn) / (1 - 0.9 ** turn);
    layers.forEach((layer, index) => {
      descend(layer.weights, layer.slopes, moments[2 * index]!, rate * warm, rate * decay);
      descend(layer.constants, layer.constantSlopes, moments[2 * index + 1]!, rate * warm, 0);
    });
  }

  return {
    batch: BATCH,
    rows,
    outputs: layers[2]!.out,
    outputSlopes: layers[2]!.back,
    forward,
    step,
    numbers: (): NetNumbers => ({
      ...shape,
      layers: layers.map(({ weights, constants }) => ({ weights: weights.slice(), constants: constants.slice() })),
    }),
  };
}

async function kernel(memory: WebAssembly.Memory): Promise<Multiply> {
  const text = readFileSync(new URL('./multiply.wat', import.meta.url), 'utf8');
  const { buffer } = (await wabt()).parseWat('multiply.wat', text, { simd: true }).toBinary({});
  const { instance } = await WebAssembly.instantiate(buffer as BufferSource, { fit: { memory } });
  return instance.exports['multiply'] as Multiply;
}

function squareplus(sums: Float32Array, out: Float32Array): void {
  for (let i = 0; i < sums.length; i += 1) out[i] = (sums[i]! + Math.sqrt(sums[i]! * sums[i]! + 1)) / 2;
}

/** Multiplies slopes by that of squareplus. */
function steepen(sums: Float32Array, back: Float32Array): void {
  for (let i = 0; i < sums.length; i += 1) back[i]! *= (1 + sums[i]! / Math.sqrt(sums[i]! * sums[i]! + 1)) / 2;
}

function descend(
  numbers: Float32Array,
  slopes: Float32Array,
  { first, second }: { first: Float32Array; second: Float32Array },
  rate: number,
  decay: number,
): void {
  for (let i = 0; i < numbers.length; i += 1) {
    const slope = slopes[i]!;
    first[i] = 0.9 * first[i]! + 0.1 * slope;
    second[i] = 0.999 * second[i]! + 0.001 * slope * slope;
    numbers[i]! -= (rate * first[i]!) / (Math.sqrt(second[i]!) + 1e-8) + decay * numbers[i]!;
  }
}
