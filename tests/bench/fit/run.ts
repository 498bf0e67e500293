// npm run -s fit: fetches the families, fits the usual range anew, and writes its numbers with their families and licences.
import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { readNet } from '@/shared/usual-range/net-file';
import type { Fit } from '@/shared/usual-range/shares';
import { corpus, type CorpusFace } from './corpus';
import { faceFiles } from './face-files';
import type { FitOptions } from './fit-net';
import { judgeFace, overFamilies } from './judge';
import type { NetNumbers } from './net-in-training';
import { stretchFor } from './stretch';
import { netFile, writeWeights } from './weights-file';

const OPTIONS: Omit<FitOptions, 'seed'> = { hidden: 64, passes: 24, share: 0.5, rate: 0.003, decay: 0.02 };
const SEEDS = [1, 2];

const faces = await corpus();
const nets = await Promise.all(SEEDS.map((seed) => fitApart({ ...OPTIONS, seed })));
const files = nets.map(netFile);
const choosing = faces.filter(({ role }) => role === 'choosing');
const plain: Fit = { nets: files.map(readNet), stretch: [1, 1, 1, 1] };
const fit: Fit = { ...plain, stretch: stretchFor(plain, choosing) };
const room = new URL('../../../shared/usual-range/', import.meta.url);
writeWeights(new URL('weights.ts', room), files, fit.stretch, 'The numbers of the usual range.');
writeFileSync(new URL('fitted-on.md', room), table(fit));
process.stdout.write(figures(fit));

/** In a process of its own, so that two nets are fitted at once. */
function fitApart(options: FitOptions): Promise<NetNumbers> {
  return new Promise((resolve, reject) => {
    const worker = fork(new URL('./fit.worker.ts', import.meta.url).pathname, {
      execArgv: ['--import', 'tsx'],
      serialization: 'advanced',
    });
    worker.on('error', reject);
    worker.on('exit', (code) => (code === 0 ? undefined : reject(new Error(`A fit ended with ${code}.`))));
    worker.on('message', (net) => {
      resolve(net as NetNumbers);
      worker.disconnect();
    });
    worker.send(options);
  });
}

function figures(of: Fit): string {
  const rows = (['fitting', 'choosing'] as const).map((role) => {
    const these = faces.filter((face) => face.role === role);
    const { r, error, half, nine, taught } = overFamilies(
      these,
      these.map((face) => judgeFace(of, face)),
    );
    const held = Object.entries(taught).map(([name, share]) => `${name} ${share.toFixed(2)}`);
    return `| ${role} | ${these.length} | ${[r, error, half, nine].map((value) => value.toFixed(3)).join(' | ')} | ${held.join(', ')} |`;
  });
  return `| families for | faces | r | error of always-zero | half range holds | nine tenths hold | taught pairs in nine tenths |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}

function table(of: Fit): string {
  const used = new Set(faces.map(({ path }) => path));
  const roles = (['fitting', 'choosing', 'held out'] as const).map((role) => {
    const lines = [...group(faces.filter((face) => face.role === role))].map(
      ([family, these]) =>
        `| ${family} | ${these[0]!.licence} | ${these.map(({ weight, italic }) => `${weight}${italic ? ' italic' : ''}`).join(', ')} |`,
    );
    return `## ${role}: ${lines.length} families\n\n| family | licence | faces |\n| --- | --- | --- |\n${lines.join('\n')}\n`;
  });
  const left = [
    ...new Set(
      faceFiles()
        .filter(({ path }) => !used.has(path))
        .map(({ family }) => family),
    ),
  ];
  return `# What the usual range was fitted on

Written by \`npm run -s fit\`. Families by their npm package in the scope @fontsource; the numbers in weights.ts are derived from
the shipped kerning and the outlines of those for fitting, and the stretch of the ranges from those for choosing.

${figures(of)}
${roles.join('\n')}
Faces of these families were fetched and left out, since they do not kern the Latin letters or lack one: ${left.join(', ')}.
`;
}

function group(these: CorpusFace[]): Map<string, CorpusFace[]> {
  const families = new Map<string, CorpusFace[]>();
  for (const face of these) families.set(face.family, [...(families.get(face.family) ?? []), face]);
  return families;
}
