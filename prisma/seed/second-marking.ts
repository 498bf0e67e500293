import type { Caller } from '@/lib/access/caller';
import { getProofLine } from '@/lib/review/desk';
import { setSecondMarking, getSecondQueue } from '@/lib/review/second-marker';
import { settleMark, getMarkDifference } from '@/lib/review/settle';
import { getAgreement } from '@/lib/review/agreement';
import { mark } from './mark';

type Round = { exerciseId: string; roundNumber: number };
type At = { now: Date };

/**
 * The smallest share, in whole tens of percent, that gives a second marker a handful of proofs: their ids decide which
 * ones.
 */
export async function askForSecondMarker(instructor: Caller, round: Round, version: number, at: At): Promise<void> {
  const {
    round: { id: roundId },
  } = await getSecondQueue(instructor, round, at);
  for (let [percent, present] = [30, version]; percent < 100; percent += 10, present += 1) {
    await setSecondMarking(instructor, { roundId, version: present, which: 'share', percent }, at);
    if ((await getSecondQueue(instructor, round, at)).count >= 4) return;
  }
}

/** The second marker goes through the sample, and thinks otherwise by one criterion of three proofs. */
export async function seedSecondMarking(second: Caller, round: Round, specimenId: string, at: At): Promise<void> {
  const { rows } = await getSecondQueue(second, round, at);
  for (const [place, { token }] of rows.entries()) {
    await mark(second, await getProofLine(second, { proof: token, specimenId }, at), at, place < 3 ? place % 2 : null);
  }
}

/** The instructor settles one of the differences in favour of the second marker; the others are there to be settled. */
export async function settleOne(instructor: Caller, round: Round, at: At): Promise<void> {
  const {
    differences: [first],
  } = await getAgreement(instructor, round, at);
  if (!first) return;
  const { criteria } = await getMarkDifference(instructor, { proof: first.token }, at);
  const apart = criteria.find(({ first: one, second: other }) => one !== other)!;
  await settleMark(
    instructor,
    {
      proof: first.token,
      criterionVersionId: apart.versionId,
      level: apart.second,
      version: apart.version,
      why: 'We looked at the lines together, on their head: the second reading is fairer.',
    },
    at,
  );
}
