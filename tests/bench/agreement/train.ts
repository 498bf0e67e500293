import { practiceInputs } from '@/shared/measure/practice';
import type { Look } from '@/shared/measure/practice-looks';
import type { AgreementFace } from './load';
import { seededRandom } from './random';

/** Rows of [near 20, far 20, gap, clear], the kerning wanted as a share of the reference gap, and how much a row counts. */
type Rows = { inputs: Float64Array[]; wanted: number[]; weights: number[] };

/** Fitted looks: threshold and weights in the units of `practiceInputs`. */
export type Fitted = { looks: Look[]; rest: number };

const HEIGHTS = 20;
const WIDTH = 2 * HEIGHTS + 2;
const BATCH = 256;

/**
 * Fits `count` looks by gradient descent (Adam) on the squared miss, each face weighing the same whatever the size of its
 * kerning. Every pair is shown as it is and mirrored. The seed only decides where the search starts.
 */
export function trainLooks(
  faces: AgreementFace[],
  { count = 8, epochs = 30, rate = 0.004, decay = 0.05, seed = 1 } = {},
): Fitted {
  const rows = rowsOf(faces);
  const { means, spreads } = standardise(rows.inputs);
  const random = seededRandom(seed);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  // One block of numbers: WIDTH weights and a threshold per look, then what each look counts, then the rest.
  const size = count * (WIDTH + 1) + count + 1;
  const numbers = new Float64Array(size);
  for (let m = 0; m < count; m += 1)
    for (let i = 0; i < WIDTH; i += 1) numbers[m * (WIDTH + 1) + i] = normal() / Math.sqrt(WIDTH);
  for (let m = 0; m < count; m += 1) numbers[count * (WIDTH + 1) + m] = 0.1 * normal();
  const slope = new Float64Array(size),
    first = new Float64Array(size),
    second = new Float64Array(size),
    lit = new Float64Array(count);
  const order = rows.inputs.map((_, index) => index);
  let step = 0;
  for (let epoch = 0; epoch < epochs; epoch += 1) {
    shuffle(order, random);
    const pace = rate * 0.5 * (1 + Math.cos((Math.PI * epoch) / epochs));
    for (let start = 0; start < order.length; start += BATCH) {
      const batch = order.slice(start, start + BATCH);
      slope.fill(0);
      for (const row of batch) addSlope(rows, row, numbers, slope, lit, count, batch.length);
      step += 1;
      for (let i = 0; i < size; i += 1) {
        first[i] = 0.9 * first[i]! + 0.1 * slope[i]!;
        second[i] = 0.999 * second[i]! + 0.001 * slope[i]! * slope[i]!;
        const shrink = isWeight(i, count) ? decay * numbers[i]! : 0;
        numbers[i]! -=
          pace * (first[i]! / (1 - 0.9 ** step) / (Math.sqrt(second[i]! / (1 - 0.999 ** step)) + 1e-8) + shrink);
      }
    }
  }
  return unfold(numbers, count, means, spreads);
}

function rowsOf(faces: AgreementFace[]): Rows {
  const rows: Rows = { inputs: [], wanted: [], weights: [] };
  for (const { face, shapes, pairs } of faces) {
    const unit = face.reference!;
    const mean = pairs.reduce((sum, pair) => sum + pair.kern, 0) / pairs.length;
    const variance = pairs.reduce((sum, pair) => sum + (pair.kern - mean) ** 2, 0) / pairs.length;
    for (const pair of pairs) {
      const seen = practiceInputs(face, shapes[pair.left]!, shapes[pair.right]!)!;
      for (const [near, far] of [
        [seen.near, seen.far],
        [seen.far, seen.near],
      ] as const) {
        rows.inputs.push(Float64Array.from([...near, ...far, seen.gap, seen.clear]));
        rows.wanted.push((pair.kern / unit) * 10);
        rows.weights.push((unit * unit) / variance);
      }
    }
  }
  const mean = rows.weights.reduce((sum, weight) => sum + weight, 0) / rows.weights.length;
  rows.weights = rows.weights.map((weight) => weight / mean);
  return rows;
}

/** Brings every input to mean 0 and spread 1, in place. */
function standardise(inputs: Float64Array[]): { means: number[]; spreads: number[] } {
  const means = new Array<number>(WIDTH).fill(0),
    spreads = new Array<number>(WIDTH).fill(0);
  for (const row of inputs)
    row.forEach((value, i) => {
      means[i]! += value / inputs.length;
    });
  for (const row of inputs)
    row.forEach((value, i) => {
      spreads[i]! += (value - means[i]!) ** 2 / inputs.length;
    });
  for (let i = 0; i < WIDTH; i += 1) spreads[i] = Math.sqrt(spreads[i]!) + 1e-6;
  for (const row of inputs) for (let i = 0; i < WIDTH; i += 1) row[i] = (row[i]! - means[i]!) / spreads[i]!;
  return { means, spreads };
}

function addSlope(
  rows: Rows,
  row: number,
  numbers: Float64Array,
  slope: Float64Array,
  lit: Float64Array,
  count: number,
  batch: number,
) {
  const input = rows.inputs[row]!,
    counts = count * (WIDTH + 1);
  let answer = numbers[counts + count]!;
  for (let m = 0; m < count; m += 1) {
    const base = m * (WIDTH + 1);
    let seen = numbers[base + WIDTH]!;
    for (let i = 0; i < WIDTH; i += 1) seen += numbers[base + i]! * input[i]!;
    lit[m] = Math.max(0, seen);
    answer += lit[m]! * numbers[counts + m]!;
  }
  const miss = (rows.weights[row]! * (answer - rows.wanted[row]!)) / batch;
  slope[counts + count]! += miss;
  for (let m = 0; m < count; m += 1) {
    if (lit[m] === 0) continue;
    slope[counts + m]! += miss * lit[m]!;
    const base = m * (WIDTH + 1),
      back = miss * numbers[counts + m]!;
    for (let i = 0; i < WIDTH; i += 1) slope[base + i]! += back * input[i]!;
    slope[base + WIDTH]! += back;
  }
}

/** Thresholds and the rest are not drawn towards 0; weights are. */
function isWeight(i: number, count: number): boolean {
  return i < count * (WIDTH + 1) ? i % (WIDTH + 1) !== WIDTH : i < count * (WIDTH + 2);
}

function shuffle(order: number[], random: () => number) {
  for (let i = order.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
}

/** Back from standardised inputs to the inputs themselves, and from tenths to shares; each look scaled so that it counts ±1. */
function unfold(numbers: Float64Array, count: number, means: number[], spreads: number[]): Fitted {
  const looks = Array.from({ length: count }, (_, m): Look => {
    const base = m * (WIDTH + 1),
      counts = numbers[count * (WIDTH + 1) + m]! / 10,
      size = Math.abs(counts);
    const weights = means.map((_, i) => (size * numbers[base + i]!) / spreads[i]!);
    const threshold = size * numbers[base + WIDTH]! - weights.reduce((sum, weight, i) => sum + weight * means[i]!, 0);
    return {
      counts: counts < 0 ? -1 : 1,
      threshold: short(threshold),
      gap: short(weights[2 * HEIGHTS]!),
      clear: short(weights[2 * HEIGHTS + 1]!),
      near: weights.slice(0, HEIGHTS).map(short),
      far: weights.slice(HEIGHTS, 2 * HEIGHTS).map(short),
    };
  });
  return { looks, rest: short(numbers[count * (WIDTH + 2)]! / 10) };
}

function short(value: number): number {
  return Math.round(value * 1e5) / 1e5 + 0;
}
