import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { comparisonOf, measureOf, spacingOf } from '@/lib/rows/spacing';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import type { AcrossLine, AcrossVersion } from '@/shared/critique/desk';
import { faultKey } from '@/shared/critique/faults';
import { measuredSuggestion } from '@/shared/critique/suggested-spacing';
import { lettersOf, spacedLetters, currentBody } from '@/shared/critique/run';
import { specimenAcrossInput } from '@/shared/schemas/critique';
import { packSchema } from '@/shared/schemas/pack';
import { pageOf } from '@/shared/schemas/page';
import type { Run } from '@/shared/schemas/spacing';
import { faultsIn, gatherSpecimen, type Gathering } from './faults';
import { noteView } from './notes';
import { entriesOf, type QueueEntry } from './queue';
import { queueOrder } from './order';
import { roundContext } from './context';
import { listStockNotes } from './stock-notes';
import { blindStill } from './second-marker';

/** Settings on one page. */
export const spacingsPerPage = 24;

/**
 * One specimen across a round: the proofs that count, below each other in the order of the queue, and the faults that
 * several of them share. With a fault chosen, only those that have it, each with what the measure would suggest there.
 */
export const getSpecimenAcross = operation({
  name: 'get-specimen-across',
  allow: 'critique:write',
  input: specimenAcrossInput,
  run: async ({ data, now }, { exerciseId, roundNumber, specimenId, fault: wanted, page: asked }) => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { round, exercise, course, me } = context;
    const specimens = await data.specimens.ofExercise(exerciseId);
    const specimen = specimens.find(({ id }) => id === specimenId);
    if (!specimen) throw notFound();
    const { order } = await queueOrder(data, context, now);
    const gathering = await gatherSpecimen(data, context, order, specimenId, now);
    const versions = (
      await data.critique.versionsById(specimenId, [...new Set(gathering.spacings.map((one) => one.specimenVersionId))])
    ).map(versionView);
    const faults = gathering.faults.map((fault) => {
      const { number, pack } = versions.find(({ id }) => id === fault.specimenVersionId)!;
      return { ...fault, key: `v${number}-${faultKey(fault)}`, letters: lettersOf(spacedLetters(pack), fault) };
    });
    const chosen = faults.find(({ key }) => key === wanted) ?? null;
    const list = chosen ? chosen.at.map((place) => gathering.spacings[place]!) : gathering.spacings;
    const { page, pages, from, to } = pageOf(asked, list.length, spacingsPerPage);
    const here = list.slice(from, to);
    const alike = gathering.identical.map((group) => group.map((place) => gathering.spacings[place]!));
    const [entries, stock] = await Promise.all([
      entriesOf(data, context, order, [...new Set([...here, ...alike.flat()])], now),
      listStockNotes(data, course.id, me.id),
    ]);
    const named: Named = new Map(entries.map((entry) => [entry.proofId, entry]));
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number },
      personKey: me.id,
      namesHidden: entries.some(({ hidden }) => hidden),
      specimen: { id: specimenId, text: versions.at(-1)?.text ?? specimen.versions[0]?.text ?? '' },
      specimens: specimens.flatMap(({ id, versions: [newest] }) => (newest ? [{ id, text: newest.text }] : [])),
      count: gathering.spacings.length,
      inList: list.length,
      page,
      pages,
      first: from + 1,
      faults: faults.map(({ key, first, last, fault, letters, at }) => ({
        key,
        first,
        last,
        fault,
        letters,
        count: at.length,
      })),
      chosen: chosen && {
        key: chosen.key,
        first: chosen.first,
        last: chosen.last,
        fault: chosen.fault,
        letters: chosen.letters,
      },
      versions,
      lines: await linesOf(
        data,
        {
          specimenId,
          named,
          at: chosen,
          me: me.id,
          blind: await blindStill(
            data,
            round,
            here.map(({ proofId }) => proofId),
          ),
        },
        here,
      ),
      identical: alike.map((group) => group.map(({ proofId }) => named.get(proofId)!.shownAs).sort()),
      stock,
    };
  },
});

export type ShownSpecimen = Awaited<ReturnType<typeof getSpecimenAcross>>;

type ReviewedSpacing = Gathering['spacings'][number];
type Named = ReadonlyMap<string, Pick<QueueEntry, 'token' | 'shownAs' | 'hidden'>>;

type Listed = {
  specimenId: string;
  named: Named;
  at: Run | null;
  /** Proofs of which a marker reads only their own notes yet, and who that is. */
  blind: ReadonlySet<string>;
  me: string;
};

/** The settings of one page, with their faults, their notes, and at a chosen place what the measure would suggest. */
async function linesOf(
  data: ScopedData,
  { specimenId, named, at, blind, me }: Listed,
  page: readonly ReviewedSpacing[],
): Promise<AcrossLine[]> {
  const items = await data.critique.specimenIn(
    specimenId,
    page.map(({ proofId }) => proofId),
  );
  const notes = await data.notes.ofItems(items.map(({ id }) => id));
  return page.flatMap(({ proofId }) => {
    const item = items.find((one) => one.proofId === proofId);
    const name = named.get(proofId)!;
    if (!item) return [];
    const spacing = spacingOf(item);
    const measure = item.measurements[0] ? measureOf(item.measurements[0]) : null;
    const comparison = item.comparisons[0] ? comparisonOf(item.comparisons[0]) : null;
    return [
      {
        token: name.token,
        shownAs: name.shownAs,
        specimenVersionId: item.specimenVersionId,
        spacing,
        faults: faultsIn(item),
        suggestion: at && measuredSuggestion(measure, comparison, spacing, at),
        notes: notes
          .filter(({ proofItem, authorId }) => proofItem.id === item.id && (authorId === me || !blind.has(proofId)))
          .map((row) => {
            const { fromPair, toPair, entries } = noteView(row, name.hidden);
            return { fromPair, toPair, body: currentBody(entries) };
          }),
      },
    ];
  });
}

function versionView({
  id,
  specimenId,
  number,
  text,
  pack,
  ...version
}: Awaited<ReturnType<ScopedData['critique']['versionsById']>>[number]): AcrossVersion {
  return {
    id,
    specimenId,
    number,
    text,
    ...sizeAndGroundOf(version),
    pack: z.parse(packSchema, JSON.parse(pack.payload)),
  };
}
