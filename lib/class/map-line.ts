import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { countedProofs, type MarkedRound } from '@/lib/review/counted';
import { spacingOf } from '@/lib/rows/spacing';
import { mapLineSchema, type MapLine, type MapRow } from '@/shared/class/map';
import type { ClassLine } from '@/shared/class/summary';
import { ENGINE } from '@/shared/measure';
import { usualRangeSchema } from '@/shared/schemas/measure';
import { beyondHalfRange } from '@/shared/scoring';
import { canonicalJson } from '@/shared/text/canonical-json';
import { summaryOf } from '@/lib/data/summary-cache';

type Round = MarkedRound & { exerciseId: string };
type Which = Pick<ClassLine, 'specimenVersionId' | 'specimenId' | 'text'>;

const proofsAtOnce = 50;

/**
 * These lines as the class set them in a round: each worked out once for a state of the round, from what was measured
 * and compared when it was sent.
 */
export async function mapLines(
  data: ScopedData,
  round: Round,
  courseId: string,
  lines: readonly Which[],
  now: Date,
): Promise<MapLine[]> {
  const state = await data.roundState.of(round, courseId);
  if (state === null) throw notFound();
  const basis = canonicalJson([ENGINE, state.counted, state.compared]);
  // Asked for once, by the first line that has to be worked out.
  let counting: Promise<string[]> | null = null;
  const proofIds = () =>
    (counting ??= countedProofs(data, round).then((all) => all.flatMap(({ proof }) => (proof ? [proof.id] : []))));
  const made: MapLine[] = [];
  for (const line of lines)
    made.push(
      await summaryOf(data, {
        roundId: round.id,
        kind: `map ${line.specimenVersionId}`,
        basis,
        schema: mapLineSchema,
        make: async () => workOut(data, await proofIds(), line),
        now,
      }),
    );
  return made;
}

async function workOut(
  data: ScopedData,
  proofIds: readonly string[],
  { specimenVersionId, specimenId, text }: Which,
): Promise<MapLine> {
  const line: MapLine = {
    version: 1,
    specimenVersionId,
    specimenId,
    text,
    letters: [],
    tolerances: [],
    setId: null,
    rows: [],
  };
  for (let from = 0; from < proofIds.length; from += proofsAtOnce) {
    for (const item of await data.classMap.spacings(specimenVersionId, proofIds.slice(from, from + proofsAtOnce)))
      addRow(line, item);
  }
  return line;
}

type Item = Awaited<ReturnType<ScopedData['classMap']['spacings']>>[number];

/**
 * Only what the map needs of a measurement and a comparison: reading all of them for a class takes several times as
 * long.
 */
const measured = z.object({
  letters: z.array(z.string()),
  pairs: z.array(
    z.object({
      total: z._default(z.number(), 0),
      usual: z._default(z.nullable(usualRangeSchema), null),
      surprise: z._default(z.nullable(z.number()), null),
    }),
  ),
  line: z.optional(z.object({ evennessGap: z.nullable(z.number()), tightness: z._default(z.number(), 0) })),
});
const compared = z.object({
  nearest: z.nullable(z.int()),
  author: z.nullable(z.string()),
  tightness: z.number(),
  pairs: z.array(z.object({ rest: z.number(), tolerance: z.number() })),
});

function addRow(
  line: MapLine,
  { proofId, proof, measurements: [measurement], comparisons: [comparison], ...item }: Item,
): void {
  const measure = measurement ? z.parse(measured, JSON.parse(measurement.payload)) : null;
  const against = comparison ? z.parse(compared, JSON.parse(comparison.payload)) : null;
  const spacing = spacingOf(item);
  if (line.letters.length === 0 && measure) line.letters = measure.letters;
  const row = { memberId: proof.memberId, proofId, ...spacing, evenness: measure?.line?.evennessGap ?? null };
  if (against && comparison && against.nearest !== null) {
    line.setId ??= comparison.referenceSetId;
    line.rows.push({
      ...row,
      against: listOf(
        line,
        against.pairs.map(({ tolerance }) => tolerance),
      ),
      author: against.author,
      tightness: against.tightness,
      tenths: against.pairs.map(({ rest }) => Math.round(rest * 10)),
    });
  } else {
    const tenths: MapRow['tenths'] = measure
      ? measure.pairs.map((pair) => {
          const beyond = beyondHalfRange(pair, measure.line?.tightness ?? 0);
          return beyond === null ? null : Math.round(beyond * 10);
        })
      : spacing.offsets.map(() => null);
    line.rows.push({ ...row, against: null, author: null, tightness: null, tenths });
  }
}

/** Most of a class shares one reference, so each list of tolerances is stored once. */
function listOf(line: MapLine, tolerances: number[]): number {
  const known = line.tolerances.findIndex(
    (list) => list.length === tolerances.length && list.every((value, index) => value === tolerances[index]),
  );
  return known >= 0 ? known : line.tolerances.push(tolerances) - 1;
}
