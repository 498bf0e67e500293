import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { proofContext, type ProofContext, roundContext } from './context';
import type { ScopedData } from '@/lib/data';
import { dueOf } from '@/lib/work/rounds';
import { notesGoAlong } from '@/lib/work/notes-along';
import { retryOnConflict } from '@/lib/data/retry';
import { type Choice, type Counted, countedProof } from '@/shared/marking/marks';
import { proofOnly, roundByNumber, sectionSchema } from '@/shared/schemas/critique';
import { markingStartedFor, type SectionDates } from '@/shared/exercise/rounds';

type SentProof = { id: string; memberId: string; number: number; receivedAt: Date };
export type CountedOfMember = Counted<SentProof> & { memberId: string };

/** A round, with what decides from when a member’s later proofs do not count. */
export type MarkedRound = {
  id: string;
  markingStartedAt: Date | null;
  sections: readonly (SectionDates & { version: number })[];
};
/** For each member who sent something in the round: the proof that counts, and why. */
export async function countedProofs(data: ScopedData, round: MarkedRound): Promise<CountedOfMember[]> {
  const [proofs, choices, inSections] = await Promise.all([
    data.markTasks.proofsOf(round.id),
    data.markTasks.choicesOf(round.id),
    // Most rounds hold for all sections alike, and then nobody's section matters.
    round.sections.length === 0
      ? new Map<string, string>()
      : data.markTasks.inSections(round.sections.map(({ sectionId }) => sectionId)),
  ]);
  return countedOf(proofs, choices, (memberId) => markingStartedFor(round, inSections.get(memberId) ?? null));
}

type ChoiceOfMember = Choice & { memberId: string };

function countedOf(
  proofs: readonly SentProof[],
  choices: readonly ChoiceOfMember[],
  markingStartedAt: (memberId: string) => Date | null,
): CountedOfMember[] {
  const chosen = new Map(choices.map((choice) => [choice.memberId, choice]));
  const byMember = new Map<string, SentProof[]>();
  for (const proof of proofs) byMember.set(proof.memberId, [...(byMember.get(proof.memberId) ?? []), proof]);
  return [...byMember].map(([memberId, own]) => ({
    memberId,
    ...countedProof(own, markingStartedAt(memberId), chosen.get(memberId) ?? null),
  }));
}

/** The proof of one member that counts now. */
async function countedOfMember(data: ScopedData, { round, proof }: Pick<ProofContext, 'round' | 'proof'>) {
  const { memberId } = proof;
  const [proofs, choices] = await Promise.all([
    data.markTasks.proofsOf(round.id, memberId),
    data.markTasks.choicesOf(round.id, memberId),
  ]);
  const markingStartedAt = markingStartedFor(round, proof.member.sectionId);
  return countedOf(proofs, choices, () => markingStartedAt)[0] ?? null;
}

/**
 * Once a round is due for a student, the first note or mark fixes which of their proofs counts: what was said about it
 * cannot lose its ground any more. Called before a note or mark is written. @throws P2002 when another proof was fixed
 * meanwhile: retry from outside.
 */
export async function fixCounted(data: ScopedData, context: ProofContext, now: Date): Promise<void> {
  const { round, proof } = context;
  const due = dueOf(round, proof.member);
  if (markingStartedFor(round, proof.member.sectionId) !== null || due === null || now.getTime() < due) return;
  const counted = await countedOfMember(data, context);
  if (counted?.why !== 'last' || counted.proof?.id !== proof.id) return;
  await data.markTasks.fix({ roundId: round.id, memberId: proof.memberId, proofId: proof.id, now });
}

/** After a note was written: had another proof begun to count meanwhile, the note goes along to it. */
export async function followCounted(data: ScopedData, context: ProofContext): Promise<void> {
  const { round, proof } = context;
  const counted = await countedOfMember(data, context);
  if (!counted?.proof || counted.proof.id === proof.id || counted.proof.number < proof.number) return;
  await notesGoAlong(data, { roundId: round.id, memberId: proof.memberId, proofId: counted.proof.id });
}

/**
 * From now on the proof that counts stays the one it is, whatever students send after. Sections with their own dates
 * begin each by itself (`section`); without one it begins for everyone else. `version`: of the round, or of the
 * section's dates.
 */
export const beginMarking = operation({
  name: 'begin-marking',
  allow: 'critique:write',
  input: z.extend(roundByNumber, {
    version: z.coerce.number().check(z.int(), z.gte(0)),
    section: sectionSchema,
  }),
  run: async ({ data, now }, { exerciseId, roundNumber, version, section }) => {
    const { round, course } = await roundContext(data, exerciseId, roundNumber);
    const own = round.sections.find(({ sectionId }) => sectionId === section);
    if (section !== null && !own) throw notFound();
    const before = (own ?? round).markingStartedAt;
    if (before !== null) return { startedAt: before };
    return data.transaction(async (inside) => {
      const started =
        section === null
          ? await inside.markTasks.startMarking(round.id, version, now)
          : await inside.markTasks.startMarkingOf(round.id, section, version, now);
      if (!started) {
        throw new AppError(
          'CONFLICT',
          'The round was changed while you looked at it. The page shows it as it is now; begin marking from there.',
        );
      }
      await inside.audit.record(
        {
          courseId: course.id,
          verb: 'marking begun',
          subject: `round:${round.id}`,
          details: own && { section: own.section.name },
        },
        now,
      );
      return { startedAt: now };
    });
  },
});

/**
 * Lets a proof count in place of the last one sent before marking began. What was released stays as it is; a new
 * release follows the choice.
 */
export const chooseProof = operation({
  name: 'choose-proof',
  allow: 'release:make',
  input: proofOnly,
  run: ({ data, now }, { proof: token }) =>
    retryOnConflict(async () => {
      const { proof, round, me, course } = await proofContext(data, token);
      await data.markTasks.choose({
        roundId: round.id,
        memberId: proof.memberId,
        proofId: proof.id,
        chosenById: me.id,
        now,
      });
      await notesGoAlong(data, { roundId: round.id, memberId: proof.memberId, proofId: proof.id });
      await data.audit.record({ courseId: course.id, verb: 'proof chosen', subject: `proof:${proof.id}` }, now);
      return { roundNumber: round.number, exerciseId: round.exerciseId };
    }),
});
