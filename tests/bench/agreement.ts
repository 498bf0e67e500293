import { fitCalibration, calibrated, stopsOf, type Calibration } from './agreement/calibrate';
import { intervalOver } from './agreement/bootstrap';
import { HELD_OUT, HELD_OUT_ALONE, TRAIN } from './agreement/faces';
import { agreementFaces, CASE_CLASSES, type AgreementFace } from './agreement/load';
import { RIVALS, type Rival } from './agreement/rivals';
import { scoreOf, type Score } from './agreement/score';

/**
 * npm run bench -- agreement: how well each measure predicts the kerning that designers shipped, on faces never fitted
 * on, as a Markdown table. Calibrations are refitted for every rival on the faces for fitting.
 */
export default async function agreement(): Promise<void> {
  const train = await agreementFaces(TRAIN),
    held = await agreementFaces(HELD_OUT);
  const stops = train.map(stopsOf),
    heldStops = held.map(stopsOf);
  const zero = mean(held.map((face) => face.alwaysZero));
  console.log(
    `${held.length} held-out faces, ${held[0]!.pairs.length} pairs each; in brackets a 95 % bootstrap interval over the faces. Mean absolute error of always saying 0: ${zero.toFixed(2)}.\n`,
  );
  console.log(
    '| evenness by | r raw | r calibrated | mean abs. error | as share of always-zero | capitals | capital + small | small | calibration |',
  );
  console.log('| --- | --- | --- | --- | --- | --- | --- | --- | --- |');
  for (const rival of RIVALS) console.log(await row(rival, train, stops, held, heldStops));
  console.log(await oneOther(train, held));
}

async function row(
  rival: Rival,
  train: AgreementFace[],
  stops: number[][],
  held: AgreementFace[],
  heldStops: number[][],
): Promise<string> {
  const raws = await predictAll(rival, train),
    heldRaws = await predictAll(rival, held);
  const calibration = fitCalibration(train, raws, stops);
  const uncalibrated = held.map((face, f) => scoreOf(face, heldRaws[f]!));
  const scores = held.map((face, f) =>
    scoreOf(
      face,
      heldRaws[f]!.map((raw, i) => calibrated(raw, heldStops[f]![i]!, calibration)),
    ),
  );
  const alone = scores.filter((_, f) => HELD_OUT_ALONE.includes(HELD_OUT[f]!));
  return cells(rival.name, [
    correlation(uncalibrated),
    `${correlation(scores)} (${mean(alone.map(({ r }) => r)).toFixed(2)} without the two families fitted on)`,
    mean(scores.map(({ miss }) => miss)).toFixed(2),
    share(scores),
    ...CASE_CLASSES.map((caseClass) => mean(scores.map(({ byCase }) => byCase[caseClass])).toFixed(2)),
    inWords(calibration),
  ]);
}

/** Each held-out face beside each face fitted on: how far one designer predicts another, as shipped. */
async function oneOther(train: AgreementFace[], held: AgreementFace[]): Promise<string> {
  const scores = held.map((face): Score => {
    const all = train.map((other) => scoreOf(face, other.kerns));
    return {
      r: mean(all.map(({ r }) => r)),
      miss: mean(all.map(({ miss }) => miss)),
      zero: face.alwaysZero,
      byCase: {
        'upper-upper': mean(all.map((s) => s.byCase['upper-upper'])),
        'upper-lower': mean(all.map((s) => s.byCase['upper-lower'])),
        'lower-lower': mean(all.map((s) => s.byCase['lower-lower'])),
      },
    };
  });
  return cells('one other designer (mean of ten)', [
    correlation(scores),
    '',
    mean(scores.map(({ miss }) => miss)).toFixed(2),
    share(scores),
    ...CASE_CLASSES.map((caseClass) => mean(scores.map(({ byCase }) => byCase[caseClass])).toFixed(2)),
    'as shipped',
  ]);
}

async function predictAll(rival: Rival, faces: AgreementFace[]): Promise<number[][]> {
  const all: number[][] = [];
  for (const face of faces) all.push(await rival.predict(face));
  return all;
}

function correlation(scores: Score[]): string {
  const figure = (drawn: Score[]) => mean(drawn.map(({ r }) => r));
  return withInterval(figure(scores), intervalOver(scores, figure));
}

/** Error over error of always-zero, both averaged over faces first, as the floor is stated. */
function share(scores: Score[]): string {
  const figure = (drawn: Score[]) => mean(drawn.map(({ miss }) => miss)) / mean(drawn.map(({ zero }) => zero));
  return withInterval(figure(scores), intervalOver(scores, figure));
}

function withInterval(value: number, [low, high]: [number, number]): string {
  return `${value.toFixed(3)} [${low.toFixed(2)}–${high.toFixed(2)}]`;
}

function inWords({ letPass, share: taken, opens, stops }: Calibration): string {
  return `lets ${letPass} pass, takes ${taken}${opens ? ', opens too' : ''}${stops ? ', stops at the clearance' : ''}`;
}

function cells(name: string, values: string[]): string {
  return `| ${[name, ...values].join(' | ')} |`;
}

function mean(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
