import { parseArgs } from 'node:util';
import { quoted } from '@/lib/face/face-error';
import type { AxisValues } from '@/lib/face/read-face';
import type { Ground, Size } from '@/shared/schemas/spacing';
import { CommandError } from './command-error';

export const USAGE = `Usage:
  npm run -s measure -- --face FACE --pairs -            pairs from standard input, two letters a line; - may be a file
  npm run -s measure -- --face FACE --lines -            lines from standard input, one JSON object a line:
                                                         {"text","offsets"?,"tracking"?,"size"?}
  npm run -s measure -- --face FACE --text "LINE"        measures one line
  npm run -s measure -- --help                           prints this
FACE is a file (TTF, OTF, WOFF, WOFF2) or a key of the catalogue, e.g. lato-400.
  --index N             face of a collection, from 0
  --axes wght=700,opsz=36   axis values of a variable face
With --lines or --text:
  --size 48px           or 36pt; 48px if not given
  --ground light|dark
With --text:
  --offsets 0,-20,5     one whole number a gap, 1/1000 em
  --tracking N          added to every gap, 1/1000 em
  --proof OUT.svg       also draws the line with its profiles and gaps`;

export type FaceChoice = { face: string; index: number; axes: AxisValues };
export type PairsCommand = FaceChoice & { task: 'pairs'; from: string };
export type LinesCommand = FaceChoice & { task: 'lines'; from: string; size: Size; ground: Ground };
export type HelpCommand = { task: 'help' };
export type TextCommand = FaceChoice & {
  task: 'text';
  text: string;
  tracking: number;
  offsets: number[] | null;
  size: Size;
  ground: Ground;
  proof: string | null;
};

/** Throws CommandError that quotes what was not understood. */
export function readArguments(given: string[]): PairsCommand | LinesCommand | TextCommand | HelpCommand {
  if (given.includes('--help')) return { task: 'help' };
  const options = parse(given);
  if (options.face === undefined) throw new CommandError(`Which face? Give --face FACE.\n${USAGE}`, 2);
  const choice = {
    face: options.face,
    index: wholeNumber('--index', options.index ?? '0'),
    axes: axisValues(options.axes),
  };
  if ([options.pairs, options.lines, options.text].filter((one) => one !== undefined).length !== 1)
    throw new CommandError(`Give one of --pairs, --lines and --text.\n${USAGE}`, 2);
  if (options.pairs !== undefined) return { ...choice, task: 'pairs', from: options.pairs };
  const at = { size: sizeOf(options.size ?? '48px'), ground: groundOf(options.ground ?? 'light') };
  if (options.lines !== undefined) return { ...choice, ...at, task: 'lines', from: options.lines };
  return {
    ...choice,
    ...at,
    task: 'text',
    text: options.text ?? '',
    tracking: wholeNumber('--tracking', options.tracking ?? '0'),
    offsets:
      options.offsets === undefined ? null : options.offsets.split(',').map((one) => wholeNumber('--offsets', one)),
    proof: options.proof ?? null,
  };
}

const NAMES = [
  'face',
  'index',
  'axes',
  'pairs',
  'lines',
  'text',
  'offsets',
  'tracking',
  'size',
  'ground',
  'proof',
] as const;

function parse(given: string[]): Partial<Record<(typeof NAMES)[number], string>> {
  const options = Object.fromEntries(NAMES.map((name) => [name, { type: 'string' as const }]));
  try {
    return parseArgs({ args: joined(given), options, strict: true, allowPositionals: false }).values;
  } catch (error) {
    throw new CommandError(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`, 2);
  }
}

/** `--offsets -20,0` as `--offsets=-20,0`: a value may begin with a hyphen, and a real minus is a minus. */
function joined(given: string[]): string[] {
  const out: string[] = [];
  for (let i = 0; i < given.length; i++) {
    const name = given[i] ?? '';
    const value = given[i + 1];
    const known = NAMES.some((one) => name === `--${one}`);
    const takesNext = known && value !== undefined && !value.startsWith('--');
    out.push(takesNext ? `${name}=${value}` : name);
    if (takesNext) i++;
  }
  return out;
}

function wholeNumber(name: string, text: string): number {
  const plain = text.trim().replace('−', '-');
  if (!/^[+-]?\d{1,9}$/.test(plain))
    throw new CommandError(`${name} wants whole numbers, and ${quoted(text)} is none.`, 2);
  return Number(plain) + 0;
}

function axisValues(text: string | undefined): AxisValues {
  if (text === undefined) return {};
  return Object.fromEntries(
    text.split(',').map((one) => {
      const match = /^\s*([A-Za-z0-9]{4})=(-?\d+(?:\.\d+)?)\s*$/.exec(one);
      if (!match)
        throw new CommandError(`--axes wants a tag and a number such as opsz=36, and ${quoted(one)} is not that.`, 2);
      return [match[1], Number(match[2])];
    }),
  );
}

export function sizeOf(text: string): Size {
  const match = /^(\d+(?:\.\d+)?)(px|pt)$/.exec(text.trim());
  if (!match || !(Number(match[1]) > 0))
    throw new CommandError(`--size wants a number with px or pt, such as 48px, and ${quoted(text)} is not that.`, 2);
  return { value: Number(match[1]), unit: match[2] as Size['unit'] };
}

function groundOf(text: string): Ground {
  if (text === 'light' || text === 'dark') return text;
  throw new CommandError(`--ground is light or dark, not ${quoted(text)}.`, 2);
}
