import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { FAMILIES, VERSION_RANGE, type Role } from './families';

/** One face file of the corpus. */
export type FaceFile = {
  family: string;
  role: Role;
  weight: number;
  italic: boolean;
  path: string;
  licence: string;
};

/** Where fetched families and results computed from them are kept between runs; none of it belongs to the project. */
export const CACHE = process.env['FIT_CACHE'] ?? join(tmpdir(), 'kerncrit-fit');

/** Of each family: a light, the regular, a bold and a heavy weight, regular and bold italic, where there are such. */
const UPRIGHTS = [
  [300, 200, 100],
  [400, 500],
  [700, 600],
  [900, 800],
];
const ITALICS = [
  [400, 500, 300],
  [700, 600],
];

/** Fetches the families with npm, once, and lists the faces chosen of them. */
export function faceFiles(): FaceFile[] {
  const missing = FAMILIES.filter(({ family }) => !existsSync(folderOf(family)));
  if (missing.length > 0) {
    mkdirSync(CACHE, { recursive: true });
    if (!existsSync(join(CACHE, 'package.json'))) writeFileSync(join(CACHE, 'package.json'), '{"private":true}\n');
    const wanted = missing.map(({ family }) => `@fontsource/${family}@${VERSION_RANGE}`);
    execFileSync('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', '--silent', ...wanted], {
      cwd: CACHE,
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  }
  return FAMILIES.flatMap(({ family, role }) => filesOf(family, role));
}

function folderOf(family: string): string {
  return join(CACHE, 'node_modules', '@fontsource', family);
}

function filesOf(family: string, role: Role): FaceFile[] {
  const folder = folderOf(family);
  const { license } = JSON.parse(readFileSync(join(folder, 'metadata.json'), 'utf8')) as {
    license: { type: string };
  };
  const files = readdirSync(join(folder, 'files'));
  const find = (weight: number, style: string) =>
    files.find((name) => name === `${family}-latin-${weight}-${style}.woff2`);
  const pick = (choices: number[][], italic: boolean) =>
    choices.flatMap((weights) => {
      const weight = weights.find((one) => find(one, italic ? 'italic' : 'normal'));
      if (weight === undefined) return [];
      const path = join(folder, 'files', find(weight, italic ? 'italic' : 'normal')!);
      return [{ family, role, weight, italic, path, licence: license.type }];
    });
  return [...pick(UPRIGHTS, false), ...pick(ITALICS, true)];
}
