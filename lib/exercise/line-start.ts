import { AppError, changedMeanwhile, notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { newReferenceSet } from '@/lib/reference/compare';
import { builtInSpacing, spacingOf } from '@/lib/rows/spacing';
import { specimenView, type SpecimenView } from '@/lib/rows/specimen';
import { isUntouched, madeStart } from '@/shared/exercise/line-start';
import { type AskedStart, type LineStart, setLineStartInput } from '@/shared/schemas/specimen';
import { carryOut } from './change-specimen';

/**
 * Lets a line begin wrong on purpose: made as asked for, or as the instructor set it on the bench (their own trial of
 * the line). The start belongs to the version of the line, so this makes a new one; drafts in which nothing was moved
 * begin from it, all others keep what was set. Errors: INVALID where there is no such gap or no trial.
 */
export const setLineStart = operation({
  name: 'set-line-start',
  allow: 'exercise:plan',
  input: setLineStartInput,
  run: async (context, { specimenId, number, start: asked }) => {
    const row = await context.data.specimens.find(specimenId);
    if (!row) throw notFound();
    const before = specimenView(row);
    if (before.number !== number) throw changedMeanwhile('this line');
    const start = await startFor(context, before, asked);
    const { id: exerciseId, courseId, state } = row.exercise;
    const { text, packSha, size, ground, pack } = before;
    const planned = {
      exercise: { id: exerciseId, courseId, state },
      before,
      after: { text, packSha, size, ground, details: { ...before.details, start } },
      pack,
      map: pack.builtIn.map((_, gap) => gap),
      same: false,
    };
    const moved = await retryOnConflict(() =>
      context.data.transaction((data) => carryOut({ ...context, data }, specimenId, planned)),
    );
    if (state !== 'draft') await newReferenceSet(context, exerciseId);
    return { exerciseId, specimenId, number: number + 1, moved, begins: start?.made ?? ('built-in' as const) };
  },
});

async function startFor({ data }: Context, line: SpecimenView, asked: AskedStart): Promise<LineStart | null> {
  if (asked.kind === 'built-in') return null;
  if (asked.kind === 'by-hand') {
    const trial = await data.specimens.ownTrial(line.versionId);
    const spacing = trial && spacingOf(trial);
    if (!spacing || isUntouched(spacing, builtInSpacing(line.pairCount)))
      throw wrong('start', 'You have not set anything on the bench of this line yet. Set it there, then come back.');
    return { made: 'by-hand', spacing };
  }
  if (asked.kind === 'one-gap' && asked.gap >= line.pairCount)
    throw wrong('gap', `“${line.text}” has ${line.pairCount} gaps. Choose one of them.`);
  return { made: asked.kind, spacing: madeStart(line.pack, asked) };
}

const wrong = (field: string, text: string): AppError => new AppError('INVALID', text, { fields: { [field]: text } });
