import { corpus, type CorpusFace } from './fit/corpus';
import { TAUGHT } from './fit/fit-net';
import { judgeFace, overFamilies, PLAIN_PAIRS } from './fit/judge';
import { readFit } from '@/shared/usual-range/usual-range';
import { CELLS, EITHER, SIGNED, faceTrials, type FaceTrials, type Told, type Trial } from './usual/trials';

/**
 * npm run bench -- usual: the usual range on families that had no part in the fit or its choices: agreement with
 * shipped kerning, what the ranges hold, and trials in which one gap of a designer's line is moved. `wanted` is what
 * was asked of it.
 */
export default async function usual(): Promise<void> {
  const held = (await corpus()).filter(({ role }) => role === 'held out');
  const upright = held.filter(({ italic }) => !italic);
  console.log(
    `${new Set(held.map(({ family }) => family)).size} held-out families: ${[...new Set(held.map(({ family }) => family))].join(', ')}\n`,
  );
  console.log(
    '| faces | number | r | error of always-zero | half range holds | nine tenths hold | acting | alone told right |',
  );
  console.log('| --- | --- | --- | --- | --- | --- | --- | --- |');
  agreement('upright', upright, 'r .845, error .67, .45–.55, .87–.93');
  agreement(
    'upright, bold and heavier',
    upright.filter(({ weight }) => weight >= 700),
  );
  agreement(
    'italic',
    held.filter(({ italic }) => italic),
    'r .83',
  );
  // Under 300 kerned pairs a face leaves much undone, and says little of what is usual.
  const kernsMuch = ({ kern }: CorpusFace) =>
    kern.subarray(0, PLAIN_PAIRS).filter((value) => value !== 0).length >= 300;
  agreement('upright, 300 kerned pairs or more', upright.filter(kernsMuch));
  agreement(
    'italic, 300 kerned pairs or more',
    held.filter((face) => face.italic && kernsMuch(face)),
  );
  taught(held);
  const tried = held.filter(({ weight, italic }) => weight === 400 || (weight === 700 && !italic));
  const trials = await allTrials(tried, 'shapes');
  const regular = trials.filter(({ face }) => !face.italic);
  tables('upright faces, regular and bold, from shapes', regular);
  tables(
    'bold',
    regular.filter(({ face }) => face.weight >= 700),
  );
  tables(
    'italic',
    trials.filter(({ face }) => face.italic),
  );
  tables(
    'upright regular, with the face’s own kerning of other pairs',
    await allTrials(
      tried.filter(({ weight, italic }) => weight === 400 && !italic),
      'own kerning',
    ),
  );
}

async function allTrials(faces: CorpusFace[], told: Told): Promise<FaceTrials[]> {
  const trials: FaceTrials[] = [];
  for (const [index, face] of faces.entries()) trials.push(await faceTrials(face, index, told));
  return trials;
}

function agreement(name: string, faces: CorpusFace[], wanted = ''): void {
  const fit = readFit();
  const { r, error, half, nine, acting, aloneRight } = overFamilies(
    faces,
    faces.map((face) => judgeFace(fit, face)),
  );
  const cells = [r, error, half, nine, acting, aloneRight].map((value) => value.toFixed(3));
  console.log(`| ${name}${wanted && ` (wanted: ${wanted})`} | ${faces.length} | ${cells.join(' | ')} |`);
}

function taught(faces: CorpusFace[]): void {
  const fit = readFit();
  const judged = overFamilies(
    faces,
    faces.map((face) => judgeFace(fit, face)),
  ).taught;
  console.log(
    `\nTaught pairs held by nine tenths (wanted .85 each): ${TAUGHT.map((name) => `${name} ${judged[name]!.toFixed(2)}`).join(', ')}`,
  );
}

function tables(name: string, trials: FaceTrials[]): void {
  console.log(`\n${name}: ${trials.length} faces\n`);
  const list = (key: string) => trials.flatMap(({ moved }) => moved.get(key) ?? []);
  const share = (key: string, of: (trial: Trial) => boolean) => {
    const all = list(key);
    return (all.filter(of).length / all.length).toFixed(2).replace(/^0/, '');
  };
  console.log(
    '| lines | trials | found first at 20 / 30 / 45 | outside at 30 / 45 | with both witnesses 30 / 45 | untouched gaps outside, both | untouched lines with any, both |',
  );
  console.log('| --- | --- | --- | --- | --- | --- | --- |');
  for (const cell of CELLS) {
    const still = trials.flatMap(({ untouched }) => untouched.get(cell) ?? []);
    const gaps = still.reduce((sum, line) => sum + line.gaps, 0);
    const told = (of: 'outside' | 'spoken') => (still.reduce((sum, line) => sum + line[of], 0) / gaps).toFixed(4);
    const lines = (of: 'outside' | 'spoken') => (still.filter((line) => line[of] > 0).length / still.length).toFixed(3);
    console.log(
      `| ${cell} | ${list(`${cell} 45`).length} | ${EITHER.map((amount) => share(`${cell} ${amount}`, ({ found }) => found)).join(' ')} | ${[30, 45].map((amount) => share(`${cell} ${amount}`, ({ outside }) => outside)).join(' ')} | ${[30, 45].map((amount) => share(`${cell} ${amount}`, ({ spoken }) => spoken)).join(' ')} | ${told('outside')}, ${told('spoken')} | ${lines('outside')}, ${lines('spoken')} |`,
    );
  }
  console.log(`\n| faults of | ${SIGNED.join(' | ')} |\n| --- |${SIGNED.map(() => ' --- |').join('')}`);
  for (const cell of CELLS)
    console.log(
      `| ${cell}: found first, told outside | ${SIGNED.map((amount) => `${share(`${cell} ${amount}`, ({ found }) => found)}, ${share(`${cell} ${amount}`, ({ outside }) => outside)}`).join(' | ')} |`,
    );
}
