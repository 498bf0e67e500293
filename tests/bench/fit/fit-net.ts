import { PAIR_INPUTS, SIDE_INPUTS, INPUTS } from '@/shared/usual-range/pair-inputs';
import { OUTPUTS } from '@/shared/usual-range/net';
import { OUTPUT_SIZE } from '@/shared/usual-range/shares';
import { seededRandom } from '../agreement/random';
import type { CorpusFace } from './corpus';
import { makeTrainer, type NetNumbers } from './net-in-training';

/** Pairs found in every course on kerning count this much more. */
export const TAUGHT = ['AT', 'AV', 'LT', 'To', 'Ty', 'Av', 'FA', 'PA', 'Yo'];
const TAUGHT_COUNT = 4;

/** A pair counts as left alone when its kerning is under this share of the reference gap. */
export const ALONE = 0.025;

/** Where fewer than this share leave a pair alone, those who do have left it undone and say nothing of its range. */
const UNDONE = 0.12;

/** The ends that the range's steps are fitted to. */
const ENDS = [0.5, 0.25, 0.05, 0.75, 0.95];

export type FitOptions = { hidden: number; seed: number; passes: number; share: number; rate: number; decay: number };

export type Row = { face: number; pair: number };

/**
 * Fits one net on the shipped kerning of these faces and gives it with its inputs unstandardised. Each pass shows a
 * random share of all pairs, each as it is or mirrored. Loss: pinball at the five ends, by the face's mean kerning,
 * over those who did not leave undone what nearly all do; a third of the squared miss of the mean; cross-entropy of
 * being left alone. A family with many faces counts by the root of their number.
 */
export async function fitNet(faces: CorpusFace[], options: FitOptions, told = (_: string) => {}): Promise<NetNumbers> {
  const { hidden, seed, passes, share, rate, decay } = options;
  const trainer = await makeTrainer({ inputs: INPUTS, hidden, outputs: 8 }, seed);
  const random = seededRandom(seed + 7919);
  const { means, spreads } = standard(faces);
  const sides = faces.map((face) => standardised(face, means, spreads));
  const sizes = faces.map((face) => sizeOf(face, faces));
  const taught = faces.map((face) =>
    Uint8Array.from(face.left, (left, i) =>
      Number(TAUGHT.includes(face.letters[left]! + face.letters[face.right[i]!]!)),
    ),
  );
  const order = new Uint32Array(faces.reduce((sum, face) => sum + face.kern.length, 0));
  const faceAt = new Uint16Array(order.length),
    pairAt = new Uint16Array(order.length);
  let count = 0;
  faces.forEach((face, f) => {
    for (let i = 0; i < face.kern.length; i += 1) {
      faceAt[count] = f;
      pairAt[count] = i;
      order[count] = count;
      count += 1;
    }
  });
  const batch = trainer.batch;
  const steps = Math.floor((order.length * share) / batch);
  const chosen = new Uint32Array(batch);
  for (let pass = 0; pass < passes; pass += 1) {
    shuffle(order, random);
    let loss = 0;
    for (let turn = 0; turn < steps; turn += 1) {
      const pace =
        rate *
        0.5 *
        (1 + Math.cos((Math.PI * (pass + turn / steps)) / passes)) *
        Math.min(1, (pass * steps + turn + 1) / 200);
      for (let i = 0; i < batch; i += 1) {
        const row = (chosen[i] = order[turn * batch + i]!);
        const face = sides[faceAt[row]!]!,
          pair = pairAt[row]!;
        fillRow(trainer.rows, i * INPUTS, face, pair, random() < 0.5);
      }
      const outputs = trainer.forward();
      loss += slopesOf(outputs, trainer.outputSlopes, chosen, (row) => {
        const f = faceAt[row]!,
          i = pairAt[row]!;
        const size = sizes[f]!;
        const wanted = faces[f]!.kern[i]! / faces[f]!.unit;
        return { wanted, ...size, counts: size.counts * (taught[f]![i] ? TAUGHT_COUNT : 1) };
      });
      trainer.step(pace, decay);
    }
    told(`pass ${pass + 1} of ${passes}: loss ${(loss / steps).toFixed(4)}`);
  }
  return unstandardised(trainer.numbers(), means, spreads);
}

type Wanted = { wanted: number; counts: number; mean: number; variance: number };

/** Slopes of the loss by the outputs; gives the mean loss. */
function slopesOf(out: Float32Array, back: Float32Array, rows: Uint32Array, wantedOf: (row: number) => Wanted): number {
  let loss = 0;
  const batch = rows.length;
  for (let i = 0; i < batch; i += 1) {
    const { wanted, counts, mean, variance } = wantedOf(rows[i]!);
    const at = i * 8,
      share = counts / batch;
    const y = wanted / OUTPUT_SIZE;
    // Mean.
    const miss = out[at]! - y;
    const square = (share * OUTPUT_SIZE * OUTPUT_SIZE) / variance / 3;
    back[at] = square * miss;
    loss += (square * miss * miss * batch) / 2;
    // Middle and its steps.
    const steps = [2, 3, 4, 5].map((k) => plus(out[at + k]!));
    const middle = out[at + 1]!;
    const ends = [
      middle,
      middle - steps[0]!,
      middle - steps[0]! - steps[1]!,
      middle + steps[2]!,
      middle + steps[2]! + steps[3]!,
    ];
    const x = out[at + 6]!,
      root = Math.sqrt(1 + x * x);
    const alone = (1 + x / root) / 2;
    const truth = Math.abs(wanted) < ALONE ? 1 : 0;
    const size = truth && alone < UNDONE ? 0 : (share * OUTPUT_SIZE) / mean / 3;
    const slopes = ends.map((end, k) => {
      const q = ENDS[k]!;
      loss += size * batch * (y > end ? q * (y - end) : (1 - q) * (end - y));
      return size * (end > y ? 1 - q : -q);
    });
    back[at + 1] = slopes[0]! + slopes[1]! + slopes[2]! + slopes[3]! + slopes[4]!;
    back[at + 2] = -(slopes[1]! + slopes[2]!) * plusSlope(out[at + 2]!);
    back[at + 3] = -slopes[2]! * plusSlope(out[at + 3]!);
    back[at + 4] = (slopes[3]! + slopes[4]!) * plusSlope(out[at + 4]!);
    back[at + 5] = slopes[4]! * plusSlope(out[at + 5]!);
    // Left alone: cross-entropy of a chance that is a plain smooth step.
    back[at + 6] = (share * 2 * (alone - truth)) / root / 3;
    back[at + 7] = 0;
    loss -= (counts / 3) * Math.log(Math.max(1e-6, truth ? alone : 1 - alone));
  }
  return loss / batch;
}

function plus(x: number): number {
  return (x + Math.sqrt(x * x + 1)) / 2;
}

function plusSlope(x: number): number {
  return (1 + x / Math.sqrt(x * x + 1)) / 2;
}

type Sides = {
  rights: Float32Array;
  lefts: Float32Array;
  pairs: Float32Array;
  face: Float32Array;
  left: Uint8Array;
  right: Uint8Array;
};

function fillRow(rows: Float32Array, at: number, face: Sides, pair: number, mirrored: boolean): void {
  const right = face.left[pair]! * SIDE_INPUTS,
    left = face.right[pair]! * SIDE_INPUTS;
  // Near and far sides have the same standard, so a mirrored pair is the same numbers changed over.
  const near = mirrored ? at + SIDE_INPUTS : at,
    far = mirrored ? at : at + SIDE_INPUTS;
  for (let k = 0; k < SIDE_INPUTS; k += 1) {
    rows[near + k] = face.rights[right + k]!;
    rows[far + k] = face.lefts[left + k]!;
  }
  const together = at + 2 * SIDE_INPUTS;
  for (let k = 0; k < PAIR_INPUTS; k += 1) rows[together + k] = face.pairs[pair * PAIR_INPUTS + k]!;
  rows.set(face.face, together + PAIR_INPUTS);
}

/** Mean and spread of every input over all letters, pairs and faces. */
function standard(faces: CorpusFace[]): { means: Float64Array; spreads: Float64Array } {
  const means = new Float64Array(INPUTS),
    spreads = new Float64Array(INPUTS);
  const block = (from: number, width: number, lists: Float32Array[]) => {
    for (let k = 0; k < width; k += 1) {
      let sum = 0,
        squares = 0,
        count = 0;
      for (const list of lists)
        for (let i = k; i < list.length; i += width) {
          sum += list[i]!;
          squares += list[i]! * list[i]!;
          count += 1;
        }
      means[from + k] = sum / count;
      spreads[from + k] = Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2)) + 1e-3;
    }
  };
  const sides = faces.flatMap(({ rights, lefts }) => [rights, lefts]);
  block(0, SIDE_INPUTS, sides);
  block(SIDE_INPUTS, SIDE_INPUTS, sides);
  block(
    2 * SIDE_INPUTS,
    PAIR_INPUTS,
    faces.map(({ pairs }) => pairs),
  );
  const width = INPUTS - 2 * SIDE_INPUTS - PAIR_INPUTS;
  block(
    2 * SIDE_INPUTS + PAIR_INPUTS,
    width,
    faces.map(({ face }) => face),
  );
  return { means, spreads };
}

function standardised(face: CorpusFace, means: Float64Array, spreads: Float64Array): Sides {
  const block = (list: Float32Array, from: number, width: number) =>
    list.map((value, i) => (value - means[from + (i % width)]!) / spreads[from + (i % width)]!);
  const together = 2 * SIDE_INPUTS;
  return {
    rights: block(face.rights, 0, SIDE_INPUTS),
    lefts: block(face.lefts, 0, SIDE_INPUTS),
    pairs: block(face.pairs, together, PAIR_INPUTS),
    face: block(face.face, together + PAIR_INPUTS, INPUTS),
    left: face.left,
    right: face.right,
  };
}

/** How much a face counts, and the size of its kerning in reference gaps. */
function sizeOf(face: CorpusFace, faces: CorpusFace[]): Omit<Wanted, 'wanted'> {
  const relatives = faces.filter(({ family }) => family === face.family).length;
  let sum = 0,
    squares = 0;
  for (const kern of face.kern) {
    sum += Math.abs(kern) / face.unit;
    squares += (kern / face.unit) ** 2;
  }
  return {
    counts: 1 / Math.sqrt(relatives),
    mean: Math.max(0.005, sum / face.kern.length),
    variance: Math.max(0.0004, squares / face.kern.length),
  };
}

function unstandardised(net: NetNumbers, means: Float64Array, spreads: Float64Array): NetNumbers {
  const [first, ...rest] = net.layers;
  const weights = first!.weights.map((weight, i) => weight / spreads[Math.floor(i / net.hidden)]!);
  const constants = first!.constants.map((constant, unit) => {
    let sum = constant;
    for (let i = 0; i < net.inputs; i += 1) sum -= weights[i * net.hidden + unit]! * means[i]!;
    return sum;
  });
  // The eighth output only fills the row.
  const last = rest[1]!;
  return {
    ...net,
    outputs: OUTPUTS,
    layers: [
      { weights, constants },
      rest[0]!,
      {
        weights: last.weights.filter((_, i) => i % 8 < OUTPUTS),
        constants: last.constants.slice(0, OUTPUTS),
      },
    ],
  };
}

function shuffle(order: Uint32Array, random: () => number) {
  for (let i = order.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    const held = order[i]!;
    order[i] = order[j]!;
    order[j] = held;
  }
}
