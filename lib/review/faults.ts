import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { summaryOf } from '@/lib/data/summary-cache';
import type { ScopedData } from '@/lib/data';
import { wrongStartOf } from '@/lib/rows/specimen';
import { comparisonOf, measureOf, spacingOf } from '@/lib/rows/spacing';
import { identicalSpacings } from '@/shared/class/summary';
import { faultsOf, gatherFaults, sharedFaultSchema } from '@/shared/critique/faults';
import { canonicalJson } from '@/shared/text/canonical-json';
import { grouped } from '@/shared/grouped';
import type { InOrder, QueueOrder } from './order';
import type { RoundContext } from './context';

const gatheringSchema = z.strictObject({
  version: z.literal(1),
  /** The proofs that count, in the order of their aliases as in the queue, each with the version of the line it has. */
  spacings: z.array(
    z.strictObject({ proofId: z.string(), memberId: z.string(), alias: z.string(), specimenVersionId: z.string() }),
  ),
  faults: z.array(sharedFaultSchema),
  /** Places of settings that are the same in every number. */
  identical: z.array(z.array(z.int())),
});
export type Gathering = z.infer<typeof gatheringSchema>;

const proofsAtOnce = 50;

/** Who has set a specimen in a round, and which faults they share. Worked out once for each state of the round. */
export async function gatherSpecimen(
  data: ScopedData,
  { round, course }: RoundContext,
  order: QueueOrder,
  specimenId: string,
  now: Date,
): Promise<Gathering> {
  const state = await data.roundState.of(round, course.id);
  if (state === null) throw notFound();
  return summaryOf(data, {
    roundId: round.id,
    kind: `faults ${specimenId}`,
    basis: canonicalJson([state.queue, state.compared]),
    schema: gatheringSchema,
    make: () => workOut(data, order.counted, specimenId),
    now,
  });
}

async function workOut(data: ScopedData, ordered: readonly InOrder[], specimenId: string): Promise<Gathering> {
  const spacings = [];
  for (let from = 0; from < ordered.length; from += proofsAtOnce) {
    const some = ordered.slice(from, from + proofsAtOnce);
    const items = new Map(
      (
        await data.critique.specimenIn(
          specimenId,
          some.map(({ proofId }) => proofId),
        )
      ).map((item) => [item.proofId, item]),
    );
    spacings.push(
      ...some.flatMap((one) => {
        const item = items.get(one.proofId);
        return item
          ? [
              {
                ...one,
                ...spacingOf(item),
                specimenVersionId: item.specimenVersionId,
                faults: faultsIn(item),
              },
            ]
          : [];
      }),
    );
  }
  const places = new Map(spacings.map(({ memberId }, place) => [memberId, place]));
  const starts = new Map(
    (await data.critique.versionsOf(specimenId)).map((row) => [row.id, wrongStartOf(row)?.spacing ?? null]),
  );
  const versions = [...grouped(spacings, ({ specimenVersionId }) => specimenVersionId).values()];
  return {
    version: 1,
    spacings: spacings.map(({ proofId, memberId, alias, specimenVersionId }) => ({
      proofId,
      memberId,
      alias,
      specimenVersionId,
    })),
    faults: gatherFaults(spacings),
    identical: versions
      .flatMap((own) => identicalSpacings(own, starts.get(own[0]!.specimenVersionId)))
      .map((group) => group.map((memberId) => places.get(memberId)!)),
  };
}

type Item = Awaited<ReturnType<ScopedData['critique']['specimenIn']>>[number];

/** What the measures find in one stored setting. */
export function faultsIn({ measurements: [measured], comparisons: [compared] }: Item) {
  return faultsOf(measured ? measureOf(measured) : null, compared ? comparisonOf(compared) : null);
}
