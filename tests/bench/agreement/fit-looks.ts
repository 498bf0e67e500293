import { writeFileSync } from 'node:fs';
import { practiceInputs, practiceShare } from '@/shared/measure/practice';
import { DEVELOPMENT, TRAIN } from './faces';
import { agreementFaces, type AgreementFace } from './load';
import { scoreOf } from './score';
import { trainLooks, type Fitted } from './train';
import { fitCalibration } from './calibrate';

const SEEDS = [1, 2, 3, 4];

/**
 * npx tsx tests/bench/agreement/fit-looks.ts: fits the looks of shared/measure/practice-looks.ts on the faces for fitting, from four
 * starting points, keeps the one that agrees best on the development faces, and writes the file. Held-out faces are not read.
 */
async function fitLooks(): Promise<void> {
  const train = await agreementFaces(TRAIN),
    development = await agreementFaces(DEVELOPMENT);
  let best: Fitted | null = null,
    most = -Infinity;
  for (const seed of SEEDS) {
    const fitted = trainLooks(train, { seed, count: 16 });
    const [fit, chosen] = [train, development].map((faces) =>
      mean(faces.map((face) => scoreOf(face, predict(face, fitted)).r)),
    );
    console.log(
      `start ${seed}: r ${fit!.toFixed(3)} on the faces fitted on, ${chosen!.toFixed(3)} on the development faces`,
    );
    if (chosen! > most) {
      most = chosen!;
      best = fitted;
    }
  }
  const raws = train.map((face) => predict(face, best!));
  const { letPass, share } = fitCalibration(
    train,
    raws,
    raws.map((raw) => raw.map(() => -Infinity)),
    { opens: true, stops: false },
  );
  writeFileSync(new URL('../../../shared/measure/practice-looks.ts', import.meta.url), fileOf(best!, letPass, share));
  console.log(`kept the best of them, letting ${letPass} pass and taking ${share} of the rest`);
}

function predict({ face, shapes, pairs }: AgreementFace, { looks, rest }: Fitted): number[] {
  return pairs.map(
    ({ left, right }) =>
      practiceShare(practiceInputs(face, shapes[left]!, shapes[right]!)!, looks, rest) * face.reference!,
  );
}

function mean(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function fileOf({ looks, rest }: Fitted, letPass: number, share: number): string {
  const lines = looks.map(
    ({ counts, threshold, gap, clear, near, far }) =>
      `  { counts: ${counts}, threshold: ${threshold}, gap: ${gap}, clear: ${clear},\n    near: [${near.join(', ')}],\n    far: [${far.join(', ')}] },`,
  );
  return `/**
 * The looks of practice.ts. Written by \`npx tsx tests/bench/agreement/fit-looks.ts\` from shipped kerning of the faces for fitting
 * (tests/bench/agreement/faces.ts); not edited by hand. A look weighs the openness of the near side and of the far side at
 * twenty heights from the bottom up, the total the apparent gap asks for, and the clearance, all as shares of the face's
 * reference gap; what exceeds 0 counts towards opening (1) or tightening (−1).
 */
export type Look = { counts: 1 | -1; threshold: number; gap: number; clear: number; near: readonly number[]; far: readonly number[] };

export const LOOKS: readonly Look[] = [
${lines.join('\n')}
];

/** What is expected when no look sees anything; and how much is let pass (1/1000 em) and what share of the rest is taken. */
export const PRACTICE = { rest: ${rest}, letPass: ${letPass}, share: ${share} };
`;
}

await fitLooks();
