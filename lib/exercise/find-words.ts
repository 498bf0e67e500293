import type { Pack } from '@/shared/schemas/pack';
import { AppError } from '@/lib/access/errors';
import { FaceError } from '@/lib/face/face-error';
import { facePairsOf } from '@/lib/word-finder/face-pairs';
import { findWordsInput, mostFound } from '@/shared/schemas/word-search';
import { operation } from '@/lib/access/operation';
import { type FoundLine, searchWords } from '@/lib/word-finder/search';
import { wordListOf } from '@/lib/word-finder/word-list';
import { findExercise } from './exercises';
import { faceAt } from './faces';

/** A found line, its letters as the list draws them, and whether the exercise has it already. */
export type ShownLine = FoundLine & { pack: Pack; there: boolean };

/** Words and lines of two words that hold the pairs that are looked for, best first in this face. */
export const findWords = operation({
  name: 'find-words',
  allow: 'exercise:plan',
  input: findWordsInput,
  run: async (context, { exerciseId, face: choice, size, language, ...search }) => {
    await findExercise(context, exerciseId);
    const { face, axes } = faceAt(choice, size);
    const [list, pairs, specimens] = await Promise.all([
      wordListOf(language),
      facePairsOf({ kind: 'catalogue', key: face.key, axes }).catch(refuse),
      context.data.specimens.ofExercise(exerciseId),
    ]);
    const found = await searchWords(list, pairs, { ...search, most: mostFound }).catch(refuse);
    const texts = new Set(specimens.map((specimen) => specimen.versions[0]?.text));
    return {
      ...found,
      lines: found.lines.map((line): ShownLine => ({
        ...line,
        pack: pairs.draw(line.text),
        there: texts.has(line.text),
      })),
    };
  },
});

function refuse(error: unknown): never {
  if (error instanceof FaceError)
    throw new AppError('INVALID', error.message, { fields: { face: error.message }, cause: error });
  throw error;
}
