import { codePoint, FaceError, quoted } from '../face-error';
import { LIMITS } from '../limits';

export type Letter = {
  /** The grapheme cluster, NFC. */
  cluster: string;
  /** Code units of the line it covers: from (included) to (not included). */
  from: number;
  to: number;
  /** Script (ISO 15924) it is set in. */
  script: string;
};

export type Line = { text: string; letters: Letter[] };

/**
 * Splits a text into its letters (grapheme clusters, Unicode UAX 29 by Intl.Segmenter): done once, on the server.
 * The text is put into NFC, trimmed, and each run of ordinary white space becomes one space.
 * Throws FaceError `bad-text`, `text-too-long`.
 */
export function splitLine(raw: string): Line {
  if (raw.length > LIMITS.textUnits) throw tooLong(raw.length);
  const text = raw
    .normalize('NFC')
    .replace(/[\t\n\f\r ]+/g, ' ')
    .trim();
  if (text === '') throw new FaceError('bad-text', `The line ${quoted(raw)} has no letter. Type at least one.`);
  if (text.length > LIMITS.lineUnits) throw tooLong(text.length);
  refuseUnsettable(text);
  const segments = [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)];
  const visible = segments.filter((one) => !/^\p{White_Space}+$/u.test(one.segment));
  if (visible.length === 0)
    throw new FaceError('bad-text', `The line ${quoted(raw)} has no letter. Type at least one.`);
  if (visible.length > LIMITS.letters) throw tooLong(visible.length);
  const huge = visible.find((one) => one.segment.length > LIMITS.clusterUnits);
  if (huge)
    throw new FaceError(
      'bad-text',
      `The letter ${quoted(huge.segment, 8)} carries ${[...huge.segment].length - 1} marks. Use fewer.`,
    );
  return { text, letters: withScripts(visible) };
}

function tooLong(length: number): FaceError {
  return new FaceError(
    'text-too-long',
    `The line has ${length} letters; ${LIMITS.letters} is the most. Split it into several lines.`,
  );
}

/** Scripts with separate letters side by side, left to right, each with its own outline. */
const SETTABLE = ['Latin', 'Greek', 'Cyrillic', 'Armenian', 'Georgian'] as const;
const SCRIPT_CODES = { Latin: 'Latn', Greek: 'Grek', Cyrillic: 'Cyrl', Armenian: 'Armn', Georgian: 'Geor' } as const;
const TESTS = SETTABLE.map((script) => [SCRIPT_CODES[script], new RegExp(`\\p{Script=${script}}`, 'u')] as const);
const SETTABLE_OR_SHARED = new RegExp(
  `^[${SETTABLE.map((script) => `\\p{Script=${script}}`).join('')}\\p{Script=Common}\\p{Script=Inherited}]$`,
  'u',
);

/** Whether a character belongs to a script that lines can be set in. */
export const isSettable = (character: string): boolean => SETTABLE_OR_SHARED.test(character);

function refuseUnsettable(text: string): void {
  let place = 0;
  for (const character of text) {
    place++;
    const where = `${codePoint(character)} at place ${place}`;
    if (/[\p{Cc}\p{Cs}\p{Co}\p{Cn}\u2028\u2029]/u.test(character))
      throw new FaceError(
        'bad-text',
        `The line holds ${where}, which is a control character or not a character at all. Delete it.`,
      );
    if (/[\p{Cf}\p{Default_Ignorable_Code_Point}]/u.test(character))
      throw new FaceError(
        'bad-text',
        `The line holds the invisible character ${where}. Delete it; a gap is set by its offset.`,
      );
    if (!isSettable(character)) {
      throw new FaceError(
        'bad-text',
        `“${character}” (${where}) belongs to a script whose letters join, stack or run from the right; pairs of it can't be told apart honestly here. Latin, Greek, Cyrillic, Armenian and Georgian can be set.`,
      );
    }
  }
}

/** Signs and figures take the script of the letters before them, at the start that of the first letters after. */
function withScripts(segments: Intl.SegmentData[]): Letter[] {
  const own = segments.map((one) => TESTS.find(([, test]) => test.test(one.segment))?.[0]);
  let current = own.find((script) => script !== undefined) ?? 'Latn';
  return segments.map((one, index) => {
    current = own[index] ?? current;
    return { cluster: one.segment, from: one.index, to: one.index + one.segment.length, script: current };
  });
}
