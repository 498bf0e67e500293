import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { courseSettingsOf } from '@/lib/rows/course';
import { comparisonOf, measureOf, spacingOf } from '@/lib/rows/spacing';
import { namesHiddenIn } from '@/lib/review/context';
import { lateOf } from '@/lib/work/rounds';
import type { Term, TermLine, TermRound } from '@/shared/class/term';
import { markingStartedFor } from '@/shared/exercise/rounds';
import { grouped } from '@/shared/grouped';
import { countedProof } from '@/shared/marking/marks';
import { idSchema } from '@/shared/schemas/id';
import { packSchema } from '@/shared/schemas/pack';
import { type ReleaseSnapshot, releaseSnapshotSchema } from '@/shared/schemas/release';

/**
 * One student’s term for those who teach, to talk over: marks as they were released, and nothing of a round in which
 * names are hidden.
 */
export const getTerm = operation({
  name: 'get-term',
  allow: 'class:see',
  input: z.strictObject({ courseId: idSchema, memberId: idSchema }),
  run: async ({ data }, { courseId, memberId }) => {
    const member = await data.terms.ofStudent(courseId, memberId);
    if (!member) throw notFound();
    return termOf(data, member, 'staff');
  },
});

/** A student’s own term: what they sent, and of each round what was released. */
export const getOwnTerm = operation({
  name: 'get-own-term',
  allow: 'release:see',
  input: z.strictObject({ courseId: idSchema }),
  run: async ({ data }, { courseId }) => {
    const member = await data.terms.own(courseId);
    if (!member) throw notFound();
    return termOf(data, member, 'student');
  },
});

type Member = NonNullable<Awaited<ReturnType<ScopedData['terms']['own']>>>;
type Exercise = Awaited<ReturnType<ScopedData['terms']['exercises']>>[number];
type Round = Exercise['rounds'][number];
type Item = Awaited<ReturnType<ScopedData['terms']['items']>>[number];
/** A student sees what was released, as it was released; staff see the present state, once names may be seen. */
type For = 'student' | 'staff';

/** A student’s term, exercise by exercise and round by round. */
async function termOf(data: ScopedData, member: Member, whom: For): Promise<Term> {
  const figuresHidden = whom === 'student' && courseSettingsOf(member.course).figuresHidden;
  const exercises = await data.terms.exercises(member.course.id, member.id);
  const looked = (
    await Promise.all(
      exercises.map(async (exercise) => {
        const hidden = whom === 'staff' && (await namesHiddenIn(data, exercise));
        return exercise.rounds.map((round) => look(exercise, round, member, whom, hidden));
      }),
    )
  ).flat();
  const proofIds = looked.flatMap(({ shown }) => shown ?? []);
  const [items, notes] = await Promise.all([
    data.terms.items(member.id, proofIds),
    whom === 'staff' ? data.terms.notes(member.id, proofIds) : [],
  ]);
  const itemsOf = grouped(items, ({ proofId }) => proofId),
    notesOf = grouped(notes, ({ proofItem }) => proofItem.proofId);
  return {
    course: { id: member.course.id, title: member.course.title, timeZone: member.course.timeZone },
    student: { id: member.id, name: member.user?.name ?? 'An erased person', section: member.section?.name ?? null },
    rounds: looked.map(({ shown, snapshot, round }): TermRound => ({
      ...round,
      notes:
        shown === null
          ? null
          : whom === 'staff'
            ? countNotes((notesOf.get(shown) ?? []).map(({ settledAt }) => settledAt !== null))
            : countNotes(snapshot!.lines.flatMap((line) => line.notes.map(({ settled }) => settled))),
      lines:
        shown === null
          ? []
          : (itemsOf.get(shown) ?? []).map((item) => {
              const line = lineOf(item, whom === 'student' ? snapshot : null);
              return figuresHidden ? { ...line, evenness: null, pairs: null } : line;
            }),
    })),
  };
}

/** What may be shown of a round, and of which proof. */
function look(
  exercise: Exercise,
  round: Round,
  member: Member,
  whom: For,
  hidden: boolean,
): { shown: string | null; snapshot: ReleaseSnapshot | null; round: Omit<TermRound, 'notes' | 'lines'> } {
  const [release] = round.releases;
  const snapshot = release ? z.parse(releaseSnapshotSchema, JSON.parse(release.snapshot)) : null;
  // Which proof counted is revealed to its student by the release.
  const counts =
    whom === 'staff' || release
      ? countedProof(round.proofs, markingStartedFor(round, member.sectionId), round.choices[0] ?? null).proof
      : null;
  const last = counts ?? round.proofs.at(-1) ?? null;
  const silent =
    last === null
      ? ('nothing sent' as const)
      : whom === 'student'
        ? release
          ? null
          : ('not released' as const)
        : hidden
          ? ('hidden' as const)
          : null;
  const shown = silent !== null ? null : whom === 'student' ? release!.proofId : (last?.id ?? null);
  const late = last && lateOf({ ...round, exercise }, member, last.receivedAt);
  return {
    shown,
    snapshot,
    round: {
      exercise: { id: exercise.id, title: exercise.title },
      number: round.number,
      title: round.title,
      // Beside a name, the time of a proof would identify its author among the nameless ones.
      sent: silent === 'hidden' ? 1 : round.proofs.length,
      receivedAt: silent === 'hidden' ? null : (last?.receivedAt.toISOString() ?? null),
      late: late && silent !== 'hidden' ? { days: late.startedDays, deduct: late.deduct } : null,
      silent,
      proofId: shown,
      released:
        release && snapshot && silent !== 'hidden'
          ? {
              number: release.number,
              percent: snapshot.total.after,
              marks: snapshot.marks.map(({ title, level, levels }) => ({
                title,
                level: level === null ? null : (levels[level]?.title ?? null),
              })),
            }
          : null,
    },
  };
}

const countNotes = (settled: readonly boolean[]) => ({ all: settled.length, settled: settled.filter(Boolean).length });

const evennessOnly = z.object({ line: z.optional(z.object({ evennessGap: z.nullable(z.number()) })) });

function lineOf(
  { specimenVersionId, measurements: [measured], comparisons: [compared], specimenVersion, ...item }: Item,
  snapshot: ReleaseSnapshot | null,
): TermLine {
  const sides = measured ? measureOf(measured).pairs.map((pair) => [pair.sides.left, pair.sides.right] as const) : [];
  const rests = snapshot
    ? (snapshot.lines.find((line) => line.specimenVersionId === specimenVersionId)?.deviations?.pairs ?? null)
    : compared
      ? comparisonOf(compared).pairs
      : null;
  return {
    text: specimenVersion.text,
    pack: z.parse(packSchema, JSON.parse(specimenVersion.pack.payload)),
    ground: sizeAndGroundOf(specimenVersion).ground,
    spacing: spacingOf(item),
    evenness: measured ? (z.parse(evennessOnly, JSON.parse(measured.payload)).line?.evennessGap ?? null) : null,
    pairs:
      rests && rests.length > 0
        ? rests.map(({ rest, within }, index) => ({ rest, within, sides: sides[index] ?? null }))
        : null,
  };
}
