import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type Font } from 'fontkit';
import { unpackWoff } from '@/lib/face/file/woff';
import { projectRoot } from '@/lib/face/project-root';

/**
 * The two families that everything but the lines is set in: SIL Open Font License 1.1, which lets documents hold them.
 */
const packages = { text: 'source-serif-4', plain: 'source-sans-3' } as const;
const subsets = ['latin', 'latin-ext', 'greek', 'cyrillic', 'vietnamese', 'greek-ext', 'cyrillic-ext'] as const;

export type Style = {
  family: keyof typeof packages;
  weight: 400 | 600;
  italic?: boolean;
  /** Points. */
  size: number;
  leading: number;
};

/** A piece of text in one file of a family; `covered` is false where no file has the character. */
export type Run = { text: string; subset: (typeof subsets)[number]; covered: boolean };

const folder = (family: Style['family']) => join(projectRoot(), 'node_modules', '@fontsource', packages[family]);

export const faceName = (style: Style, subset: string): string =>
  `${packages[style.family]}-${subset}-${style.weight}-${style.italic ? 'italic' : 'normal'}`;

const files = new Map<string, Buffer>();

/**
 * The bytes of a face file as sfnt, read once: the setting library stumbles over WOFF whose last letter has no outline.
 */
export function faceFile(style: Style, subset: string): Buffer {
  const name = faceName(style, subset);
  const bytes =
    files.get(name) ?? Buffer.from(unpackWoff(readFileSync(join(folder(style.family), 'files', `${name}.woff`))));
  files.set(name, bytes);
  return bytes;
}

type Characters = { subset: Run['subset']; has: ReadonlySet<number> };
const filesOf = new Map<Style, Map<Run['subset'], Characters | null>>();

/**
 * The characters that a file has, as its own table says (the package's list of ranges promises more); null where there
 * is no such file.
 */
function charactersOf(style: Style, subset: Run['subset']): Characters | null {
  const known = filesOf.get(style) ?? new Map<Run['subset'], Characters | null>();
  filesOf.set(style, known);
  const found = known.get(subset);
  if (found !== undefined) return found;
  const file = join(folder(style.family), 'files', `${faceName(style, subset)}.woff`);
  const read = existsSync(file)
    ? { subset, has: new Set((create(faceFile(style, subset)) as Font).characterSet) }
    : null;
  known.set(subset, read);
  return read;
}

/**
 * Splits a text into runs that one file can set; marks stay with their letter. A narrow no-break space (U+202F), which
 * no file has, is set as a thin one: where lines end has been decided before.
 */
export function runsOf(text: string, style: Style): Run[] {
  const runs: Run[] = [];
  let current: Characters | null = null;
  for (const character of text.replaceAll('\u202F', '\u2009')) {
    const code = character.codePointAt(0)!;
    const last = runs.at(-1);
    if (last && current && (current.has.has(code) || /\p{M}/u.test(character))) {
      last.text += character;
      continue;
    }
    const next = fileWith(style, code);
    if (last && next === null && !last.covered) last.text += character;
    else runs.push({ text: character, subset: next?.subset ?? 'latin', covered: next !== null });
    current = next;
  }
  return runs;
}

function fileWith(style: Style, code: number): Characters | null {
  for (const subset of subsets) {
    const file = charactersOf(style, subset);
    if (file?.has.has(code)) return file;
  }
  return null;
}
