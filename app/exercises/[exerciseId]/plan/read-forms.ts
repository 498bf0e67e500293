import { AppError } from '@/lib/access/errors';
import { parseSizes, SizeTextError } from '@/shared/exercise/sizes';

/** The fields of the planning forms in the shape their operations take. They are checked there, not here. */
const text = (form: FormData, name: string): string => String(form.get(name) ?? '');
const whole = (form: FormData, name: string): number => Number(text(form, name));
const ticked = (form: FormData, name: string): boolean => form.get(name) === 'yes';
const list = (form: FormData, name: string): string[] => form.getAll(name).map(String);

export const only =
  <Name extends string>(name: Name) =>
  (form: FormData) => ({ [name]: text(form, name) });

export const atVersion = (form: FormData) => ({
  exerciseId: text(form, 'exerciseId'),
  version: whole(form, 'version'),
});

export const exercise = (form: FormData) => ({
  ...atVersion(form),
  title: text(form, 'title'),
  brief: lines(form, 'brief'),
  settings: {
    benchTells: text(form, 'settings.benchTells'),
    benchTellsAfterProof: text(form, 'settings.benchTellsAfterProof'),
    referencesShown: text(form, 'settings.referencesShown'),
    tolerance: number(form, 'settings.tolerance'),
    smallestSize: oneSizeOrNone(form, 'settings.smallestSize'),
    namesHidden: ticked(form, 'settings.namesHidden'),
    safetySigns: ticked(form, 'settings.safetySigns'),
  },
});

const typedRound = (form: FormData) => ({
  title: text(form, 'title'),
  opensLocal: text(form, 'opensLocal'),
  dueLocal: text(form, 'dueLocal'),
  accept: text(form, 'accept'),
  untilLocal: text(form, 'untilLocal'),
  deductPerDay: number(form, 'deductPerDay'),
});

export const newRound = (form: FormData) => ({ exerciseId: text(form, 'exerciseId'), ...typedRound(form) });
export const roundAtVersion = (form: FormData) => ({ roundId: text(form, 'roundId'), version: whole(form, 'version') });
export const round = (form: FormData) => ({ ...roundAtVersion(form), ...typedRound(form) });
export const secondMarking = (form: FormData) => ({
  ...roundAtVersion(form),
  which: text(form, 'which'),
  percent: number(form, 'percent'),
});
export const sectionDates = (form: FormData) => ({
  ...roundAtVersion(form),
  sectionId: text(form, 'sectionId'),
  opensLocal: text(form, 'opensLocal'),
  dueLocal: text(form, 'dueLocal'),
});
export const extension = (form: FormData) => ({
  roundId: text(form, 'roundId'),
  memberId: text(form, 'memberId'),
  dueLocal: text(form, 'dueLocal'),
});

const typedCriterion = (form: FormData) => ({
  title: text(form, 'title'),
  description: text(form, 'description'),
  basis: text(form, 'basis'),
  weight: number(form, 'weight'),
  levels: levelIndices(form)
    .map((index) => ({
      title: text(form, `levels.${index}.title`),
      description: text(form, `levels.${index}.description`),
      points: number(form, `levels.${index}.points`),
    }))
    // A level left completely empty is omitted.
    .filter((level) => level.title.trim() !== '' || level.description.trim() !== '' || !Number.isNaN(level.points)),
});

export const newCriterion = (form: FormData) => ({ exerciseId: text(form, 'exerciseId'), ...typedCriterion(form) });
export const criterion = (form: FormData) => ({
  criterionId: text(form, 'criterionId'),
  number: whole(form, 'number'),
  ...typedCriterion(form),
});

export const newSpecimens = (form: FormData) => ({
  exerciseId: text(form, 'exerciseId'),
  lines: text(form, 'lines')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== ''),
  faces: list(form, 'faces'),
  sizes: sizes(form, 'sizes'),
  grounds: list(form, 'grounds'),
});

export const specimen = (form: FormData) => ({
  specimenId: text(form, 'specimenId'),
  text: text(form, 'text'),
  face: text(form, 'face'),
  size: sizes(form, 'size')[0],
  ground: text(form, 'ground'),
  remark: text(form, 'remark'),
});
export const specimenAtVersion = (form: FormData) => ({ ...specimen(form), number: whole(form, 'number') });
export const lineStart = (form: FormData) => {
  const kind = text(form, 'start');
  return {
    specimenId: text(form, 'specimenId'),
    number: whole(form, 'number'),
    start: {
      kind,
      ...(kind === 'one-gap' && { gap: whole(form, 'gap'), by: number(form, 'by') }),
      ...(kind === 'tight' && { by: number(form, 'by') }),
    },
  };
};
export const move = (form: FormData) => ({ specimenId: text(form, 'specimenId'), to: text(form, 'to') });

/** Forms send CR LF for a new line (HTML, form submission); texts are stored with LF. */
const lines = (form: FormData, name: string): string => text(form, name).replace(/\r\n?/g, '\n');

/**
 * A number as people type it, with a comma or a point, and with either minus sign; NaN is refused by the schema, which
 * names the field.
 */
function number(form: FormData, name: string): number {
  const typed = text(form, name).trim().replace(',', '.').replace('−', '-');
  return typed === '' ? Number.NaN : Number(typed);
}

const levelIndices = (form: FormData): number[] =>
  [...new Set([...form.keys()].flatMap((key) => /^levels\.(\d+)\./.exec(key)?.[1] ?? []))]
    .map(Number)
    .sort((a, b) => a - b);

/** An empty field is no size; two sizes are an error. */
function oneSizeOrNone(form: FormData, name: string) {
  if (text(form, name).trim() === '') return null;
  const typed = sizes(form, name);
  if (typed.length === 1) return typed[0]!;
  const status = `“${text(form, name)}” is more than one size. Give the smallest only, such as 14 px.`;
  throw new AppError('INVALID', status, { fields: { [name]: status } });
}

function sizes(form: FormData, name: string) {
  try {
    return parseSizes(text(form, name));
  } catch (error) {
    if (error instanceof SizeTextError)
      throw new AppError('INVALID', error.message, { fields: { [name]: error.message } });
    throw error;
  }
}
