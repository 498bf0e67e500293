import * as z from 'zod/mini';
import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/draft/spacing-of';
import { settingOf } from '@/lib/proof/measure-proof-line';
import { measureLine } from '@/shared/measure';
import { packSchema } from '@/shared/schemas/pack';
import { responseHints, type SetSpecimen } from '@/shared/scoring';

type Item = { id: string; specimenVersion: { text: string } };

/** No more than so many settings of one text are held against each other. */
const most = 8;

/**
 * How a student answered to size, weight and face where a proof has one text several times: hints in sentences, each
 * with its source, those that concern the line `here`. Empty where the text stands alone.
 */
export async function acrossSpecimens(data: ScopedData, items: readonly Item[], here: Item): Promise<string[]> {
  const others = items
    .filter((item) => item.id !== here.id && item.specimenVersion.text === here.specimenVersion.text)
    .slice(0, most - 1);
  if (others.length === 0) return [];
  const lines = await Promise.all([here, ...others].map(({ id }) => data.critique.line(id)));
  const set = lines.flatMap((line) => (line ? [setSpecimen(line)] : []));
  return responseHints(set)
    .filter(({ first }) => first === 0)
    .map(({ finding }) => finding.sentence);
}

type Line = NonNullable<Awaited<ReturnType<ScopedData['critique']['line']>>>;

function setSpecimen({ specimenVersion, ...row }: Line): SetSpecimen {
  const pack = z.parse(packSchema, JSON.parse(specimenVersion.pack.payload));
  const measure = measureLine(pack, spacingOf(row), settingOf(specimenVersion));
  return {
    measure,
    family: pack.face?.family ?? '',
    weight: pack.face?.weight ?? 400,
    drawnFor: pack.face?.drawnFor ?? null,
  };
}
