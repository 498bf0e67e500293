// npm run -s fit: fetches the families, fits the usual range anew, and writes its numbers with their families and
// licences.
import { writeFileSync } from 'node:fs';
import { readNet } from '@/shared/usual-range/net-file';
import type { Fit } from '@/shared/usual-range/shares';
import { corpus, type CorpusFace } from './corpus';
import { faceFiles } from './face-files';
import { fitApart } from './fit-apart';
import type { FitOptions } from './fit-net';
import { judgeFace, overFamilies, PLAIN_PAIRS } from './judge';
import { stretchFor } from './stretch';
import { netFile, writeWeights } from './weights-file';

/** Chosen on the families for choosing; the seed only decides where the search starts. */
const OPTIONS: FitOptions[] = [{ hidden: 64, seed: 4, passes: 12, share: 0.5, rate: 0.003, decay: 0.3 }];

/**
 * A face in which fewer of the plain pairs are kerned leaves so much undone that it is no evidence of what is usual.
 */
const KERNED_PAIRS = 150;

const faces = await corpus();
const enough = faces.filter(
  ({ kern }) => kern.subarray(0, PLAIN_PAIRS).filter((value) => value !== 0).length >= KERNED_PAIRS,
);
const fitting = enough.filter(({ role }) => role === 'fitting');
const nets = await Promise.all(
  OPTIONS.map((options) =>
    fitApart(
      fitting.map(({ path }) => path),
      options,
    ),
  ),
);
const files = nets.map(netFile);
const plain = { nets: files.map(readNet) };
// What a net foretells of the faces it was fitted on is no better than of others, so their regulars help with the ends.
const ends = enough.filter(({ role, weight }) => role === 'choosing' || (role === 'fitting' && weight === 400));
const fit: Fit = { ...plain, stretch: stretchFor(plain, ends) };
const room = new URL('../../../shared/usual-range/', import.meta.url);
writeWeights(new URL('weights.ts', room), files, fit.stretch, 'The numbers of the usual range.');
const reached = figures(fit);
writeFileSync(new URL('fitted-on.md', room), table(reached));
process.stdout.write(reached);

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

function table(agreement: string): string {
  const used = new Set(faces.map(({ path }) => path));
  const roles = (['fitting', 'choosing', 'held out'] as const).map((role) => {
    const lines = [...group(faces.filter((face) => face.role === role))].map(
      ([family, these]) =>
        `| ${family} | ${these[0]!.licence} | ${these.map(({ weight, italic }) => `${weight}${italic ? ' italic' : ''}`).join(', ')} |`,
    );
    return `## ${role}: ${lines.length} families\n\n| family | licence | faces |\n| --- | --- | --- |\n${lines.join('\n')}\n`;
  });
  const left = familiesOf(faceFiles().filter(({ path }) => !used.has(path)));
  return `# What the usual range was fitted on

Written by \`npm run -s fit\`. Families by their npm package in the scope @fontsource; the numbers in weights.ts are derived from
the shipped kerning and the outlines of those for fitting, and the stretch of the ranges from those for choosing and from the
regulars of those for fitting. Faces that kern fewer than ${KERNED_PAIRS} of the 2,028 plain pairs are judged here and not fitted on.

${agreement}
${roles.join('\n')}
Faces of these families were fetched and left out, since they do not kern the Latin letters or lack one: ${left.join(', ')}.
`;
}

function familiesOf(these: { family: string }[]): string[] {
  return [...new Set(these.map(({ family }) => family))];
}

function group(these: CorpusFace[]): Map<string, CorpusFace[]> {
  const families = new Map<string, CorpusFace[]>();
  for (const face of these) families.set(face.family, [...(families.get(face.family) ?? []), face]);
  return families;
}
