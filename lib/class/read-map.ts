import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { roundInHand } from '@/lib/review/context';
import { spacingOf } from '@/lib/rows/spacing';
import { settingOf } from '@/lib/reference/compare';
import type { ClassMap, MapLine, MapLineShown } from '@/shared/class/map';
import { mapInput } from '@/shared/schemas/class';
import { packSchema } from '@/shared/schemas/pack';
import { classSummary } from './class-summary';
import { mapLines } from './map-line';
import { studentNames } from './student-names';

/** The map of pairs × students of one line, or of all lines of a round, in one compact answer. */
export const readMap = operation({
  name: 'read-map',
  allow: 'class:see',
  input: mapInput,
  run: async ({ data, now }, { exerciseId, roundNumber, line }): Promise<ClassMap> => {
    const hand = await roundInHand(data, exerciseId, roundNumber);
    const { summary } = await classSummary(data, hand.round, hand.course.id, now);
    const wanted = summary.lines.filter(({ specimenVersionId }) => line === null || specimenVersionId === line);
    if (wanted.length === 0) throw notFound();
    const lines = await mapLines(data, hand.round, hand.course.id, wanted, now);
    const proofs = [
      ...new Map(
        lines.flatMap(({ rows }) => rows.map(({ memberId, proofId }) => [proofId, { memberId, proofId }])),
      ).values(),
    ];
    const nameOf = await studentNames(data, hand, proofs, now);
    const named = proofs.map((proof) => ({ ...nameOf(proof), proofId: proof.proofId })).sort(byNameAndWork(lines));
    const order = named.map(({ proofId }) => proofId);
    const [versions, references] = await Promise.all([
      data.classMap.versions(lines.map((each) => each.specimenVersionId)),
      data.classMap.references(
        [...new Set(lines.flatMap(({ setId }) => setId ?? []))],
        lines.map((each) => each.specimenVersionId),
      ),
    ]);
    return {
      students: named.map(({ name, token }) => ({ name, token })),
      namesShown: named.every(({ hidden }) => !hidden),
      lines: lines.map((each) =>
        shownLine(each, {
          version: versions.find(({ id }) => id === each.specimenVersionId),
          references: references.filter(
            ({ setId, specimenVersionId }) => setId === each.setId && specimenVersionId === each.specimenVersionId,
          ),
          order,
          ownTolerance: hand.settings.tolerance,
        }),
      ),
    };
  },
});

/** By name; those without one yet by what they set, so that the order tells nothing of who they are or when they sent. */
function byNameAndWork(lines: readonly MapLine[]) {
  const work = new Map<string, string>();
  for (const { rows } of lines)
    for (const { proofId, tracking, offsets } of rows)
      work.set(proofId, `${work.get(proofId) ?? ''}|${tracking} ${offsets.join()}`);
  const compare = (one: string, other: string) => (one < other ? -1 : one > other ? 1 : 0);
  return (one: { name: string; proofId: string }, other: { name: string; proofId: string }) =>
    compare(one.name, other.name) || compare(work.get(one.proofId) ?? '', work.get(other.proofId) ?? '');
}

type Beside = {
  version: Awaited<ReturnType<ScopedData['classMap']['versions']>>[number] | undefined;
  references: Awaited<ReturnType<ScopedData['classMap']['references']>>;
  order: readonly string[];
  ownTolerance: number;
};

function shownLine(
  { specimenVersionId, specimenId, text, letters, tolerances, rows }: MapLine,
  { version, references, order, ownTolerance }: Beside,
): MapLineShown {
  if (!version) throw notFound();
  const rowOf = new Map(rows.map((row) => [row.proofId, row]));
  return {
    specimenVersionId,
    specimenId,
    text,
    letters,
    tolerances,
    ownTolerance,
    pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
    ground: settingOf(version).ground,
    references: references.map(({ author, ...reference }) => ({
      author: author.user?.name ?? 'a former instructor',
      spacing: spacingOf(reference),
    })),
    rows: order.map((proofId) => {
      const row = rowOf.get(proofId);
      if (!row) return null;
      const nearest = references.findIndex(({ authorId }) => authorId === row.author);
      return {
        tracking: row.tracking,
        offsets: row.offsets,
        against: row.against,
        nearest: nearest < 0 ? null : nearest,
        tenths: row.tenths,
      };
    }),
  };
}
