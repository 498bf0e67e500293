import * as z from 'zod/mini';
import type { ScopedData } from '@/lib/data';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { pairMapOf, spacingOf } from '@/lib/rows/spacing';
import type { EarlierNote } from '@/shared/critique/desk';
import { followPair, pairChange } from '@/shared/critique/pair-change';
import { currentBody } from '@/shared/critique/run';
import { packSchema } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { measureLine, responseHints, type SetSpecimen } from '@/shared/scoring';
import { sayFinding } from '@/shared/wording/finding-words';
import { noteView } from './notes';

type Where = {
  /** Settings of earlier rounds. */ proofItemIds: readonly string[];
  specimenId: string;
  versionId: string;
};

/** Notes on this line in earlier rounds, compared with its present spacing. */
export async function earlierNotes(data: ScopedData, where: Where, now: Spacing): Promise<EarlierNote[]> {
  if (where.proofItemIds.length === 0) return [];
  const [notes, mapsFrom] = await Promise.all([
    data.notes.ofEarlier(where.proofItemIds),
    mapsTo(data, where.specimenId, where.versionId),
  ]);
  return notes.map((note) => {
    const { id, fromPair, toPair, suggestion, entries } = noteView(note, true);
    const then = spacingOf(note.proofItem);
    const since = mapsFrom(note.proofItem.specimenVersionId);
    const pairs =
      fromPair === null || toPair === null
        ? []
        : Array.from({ length: toPair - fromPair + 1 }, (_, index) => fromPair + index);
    const changes = pairs.map((pair, index) =>
      pairChange(pair, then, now, followPair(pair, since), suggestion?.[index] ?? null),
    );
    return { id, round: note.proofItem.proof.round.number, body: currentBody(entries), fromPair, toPair, changes };
  });
}

/** The pair maps that lead from any version of a specimen to `versionId`, oldest first. */
export async function mapsTo(
  data: ScopedData,
  specimenId: string,
  versionId: string,
): Promise<(from: string) => (number | null)[][]> {
  const versions = await data.critique.versionsOf(specimenId);
  const place = new Map(versions.map(({ id }, index) => [id, index]));
  // The map of a version leads from the one before it to it.
  const maps = versions.map((version) => pairMapOf(version) ?? []);
  return (fromId) => {
    const from = place.get(fromId) ?? 0;
    return maps.slice(from + 1, (place.get(versionId) ?? from) + 1);
  };
}

type Item = { id: string; specimenVersion: { text: string } };

/** No more than so many settings of one text are held against each other. */
const most = 8;

/**
 * How a student responded to size, weight and face where a proof has one text several times: hints in sentences, each
 * with its source, those that concern the line `here`. Empty where the text occurs once.
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
    .map(({ finding }) => sayFinding(finding).sentence);
}

type Line = NonNullable<Awaited<ReturnType<ScopedData['critique']['line']>>>;

function setSpecimen({ specimenVersion, ...row }: Line): SetSpecimen {
  const pack = z.parse(packSchema, JSON.parse(specimenVersion.pack.payload));
  const measure = measureLine(pack, spacingOf(row), sizeAndGroundOf(specimenVersion));
  return {
    measure,
    family: pack.face?.family ?? '',
    weight: pack.face?.weight ?? 400,
    drawnFor: pack.face?.drawnFor ?? null,
  };
}
