import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import { spacingOf } from '@/lib/rows/spacing';
import { pairTotals } from '@/shared/class/pair-totals';
import { prepareLine } from '@/shared/measure';
import { pairTotalsInput } from '@/shared/schemas/class';
import { packSchema } from '@/shared/schemas/pack';
import { classSummary } from './class-summary';
import { mapLines } from './map-line';

/** Of one line of a round: what the class set at each pair, as totals, beside the references and their tolerances. Names nobody but the authors of references. */
export const showPairTotals = operation({
  name: 'show-pair-totals',
  allow: 'class:see',
  input: pairTotalsInput,
  run: async ({ data, now }, { exerciseId, roundNumber, line }) => {
    const { round, course, settings } = await roundInHand(data, exerciseId, roundNumber);
    const { summary } = await classSummary(data, round, course.id, now);
    const wanted = summary.lines.find(({ specimenVersionId }) => specimenVersionId === line);
    const [version] = wanted ? await data.classMap.versions([line]) : [];
    if (!wanted || !version) throw notFound();
    const [map] = await mapLines(data, round, course.id, [wanted], now);
    const references = await data.classMap.references(map!.setId ? [map!.setId] : [], [line]);
    const builtIn = prepareLine(z.parse(packSchema, JSON.parse(version.pack.payload))).pairs.map(
      (pair) => pair.builtIn,
    );
    return pairTotals(
      map!,
      builtIn,
      references.map(({ authorId, author, ...reference }) => ({
        name: author.user?.name ?? 'a former instructor',
        spacing: spacingOf(reference),
        tolerances: map!.tolerances[map!.rows.find((row) => row.author === authorId)?.against ?? 0] ?? [],
      })),
      settings.tolerance,
    );
  },
});
