import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { letOthersIn } from '@/lib/let-others-in';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { roundContext, type RoundContext } from '@/lib/review/context';
import { queueOrder } from '@/lib/review/order';
import { tokenOf } from '@/lib/review/tasks';
import { spacingOf } from '@/lib/rows/spacing';
import type { ClassMap, MapLine, MapLineShown } from '@/shared/class/map';
import { columnsOf, valueAt } from '@/shared/class/map-view';
import { mapInput, getMapPageInput } from '@/shared/schemas/class';
import { packSchema } from '@/shared/schemas/pack';
import { pageOf } from '@/shared/schemas/page';
import { roundAskedFor } from './class';
import { classSummary } from './class-summary';
import { mapLines } from './map-line';

const rowsPerPage = 20;

/** The surroundings of the map: its exercise, rounds and lines; and, on request, the same numbers as a table. */
export const getMapPage = operation({
  name: 'get-map-page',
  allow: 'class:see',
  input: getMapPageInput,
  run: async ({ data, now, caller }, { exerciseId, round: asked, line, tablePage }) => {
    const { rounds, number } = await roundAskedFor(data, exerciseId, asked);
    if (number === null) throw notFound();
    const { round, exercise, course } = await roundContext(data, exerciseId, number);
    const { summary } = await classSummary(data, round, course.id, now);
    const chosen =
      line === 'all'
        ? null
        : (summary.lines.find(({ specimenVersionId }) => specimenVersionId === line) ?? summary.lines[0] ?? null);
    if (line !== null && line !== 'all' && chosen?.specimenVersionId !== line) throw notFound();
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      rounds: rounds.map((one) => ({ number: one.number, title: one.title })),
      round: number,
      proofs: summary.proofs,
      lines: summary.lines.map(({ specimenVersionId, text }, index) => ({
        id: specimenVersionId,
        text: summary.lines.some((other, place) => place !== index && other.text === text)
          ? `${text} (line ${index + 1})`
          : text,
      })),
      line: line === 'all' ? 'all' : (chosen?.specimenVersionId ?? null),
      compared: (chosen ? [chosen] : summary.lines).some((each) => each.yardstick === 'reference'),
      table: tablePage === null || chosen === null ? null : await table(chosen.specimenVersionId, tablePage),
    };

    async function table(specimenVersionId: string, askedPage: number) {
      const map = await getMap(caller, { exerciseId, roundNumber: number, line: specimenVersionId }, { now });
      const columns = columnsOf(map.lines);
      const { page, pages, from } = pageOf(askedPage, map.students.length, rowsPerPage);
      return {
        page,
        pages,
        pairs: columns.map(({ letters }) => letters),
        rows: map.students
          .slice(from, from + rowsPerPage)
          .map(({ name }, index) => ({ name, values: columns.map((column) => valueAt(map, from + index, column)) })),
      };
    }
  },
});

/** The map of pairs × students of one line, or of all lines of a round, in one compact answer. */
export const getMap = operation({
  name: 'get-map',
  allow: 'class:see',
  input: mapInput,
  run: async ({ data, now }, { exerciseId, roundNumber, line }): Promise<ClassMap> => {
    const context = await roundContext(data, exerciseId, roundNumber);
    const { summary } = await classSummary(data, context.round, context.course.id, now);
    const wanted = summary.lines.filter(({ specimenVersionId }) => line === null || specimenVersionId === line);
    if (wanted.length === 0) throw notFound();
    const lines = await mapLines(data, context.round, context.course.id, wanted, now);
    const proofs = [
      ...new Map(
        lines.flatMap(({ rows }) => rows.map(({ memberId, proofId }) => [proofId, { memberId, proofId }])),
      ).values(),
    ];
    const nameOf = await studentNames(data, context, proofs, now);
    const named = proofs.map((proof) => ({ ...nameOf(proof), proofId: proof.proofId })).sort(byNameAndWork(lines));
    const order = named.map(({ proofId }) => proofId);
    const [versions, references] = await Promise.all([
      data.classMap.versions(lines.map((each) => each.specimenVersionId)),
      data.classMap.references(
        [...new Set(lines.flatMap(({ setId }) => setId ?? []))],
        lines.map((each) => each.specimenVersionId),
      ),
    ]);
    const shown: MapLineShown[] = [];
    for (const each of lines) {
      // A line of a large class is a lot of rows.
      await letOthersIn();
      shown.push(
        shownLine(each, {
          version: versions.find(({ id }) => id === each.specimenVersionId),
          references: references.filter(
            ({ setId, specimenVersionId }) => setId === each.setId && specimenVersionId === each.specimenVersionId,
          ),
          order,
          ownTolerance: context.settings.tolerance,
        }),
      );
    }
    return {
      students: named.map(({ name, token }) => ({ name, token })),
      namesShown: named.every(({ hidden }) => !hidden),
      lines: shown,
    };
  },
});

/** By name; unnamed students by what they set, so that the order reveals neither who they are nor when they sent. */
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
    ground: sizeAndGroundOf(version).ground,
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

type ShownStudent = { name: string; token: string | null; hidden: boolean };
type Whose = { memberId: string; proofId: string };

/**
 * How staff see the students of these proofs: by name, or, where names are hidden and nothing has been released to them
 * yet, by the alias they have during marking. The token replaces the proof's id in an address.
 */
async function studentNames(
  data: ScopedData,
  context: RoundContext,
  proofs: readonly Whose[],
  now: Date,
): Promise<(who: Whose) => ShownStudent> {
  const { hidden } = context;
  const memberIds = proofs.map(({ memberId }) => memberId);
  const [people, called, queue] = await Promise.all([
    data.markTasks.peopleOf(memberIds),
    hidden ? data.markTasks.aliasesOf(context.exercise.id, memberIds) : new Map<string, string>(),
    hidden ? queueOrder(data, context, now) : null,
  ]);
  const aliases = new Map(queue?.order.counted.map(({ proofId, alias }) => [proofId, alias]));
  return ({ memberId, proofId }) => {
    const alias = aliases.get(proofId);
    if (hidden)
      return {
        name: called.get(memberId) ?? 'A student without a name yet',
        token: alias ? tokenOf({ proofId, alias }, true) : null,
        hidden: true,
      };
    return {
      name: people.get(memberId)?.name ?? `Erased person (${memberId.slice(-6)})`,
      token: proofId,
      hidden: false,
    };
  };
}
