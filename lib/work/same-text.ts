import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { type CurrentLine, currentLines, lineView } from './lines';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { isUntouched } from '@/shared/exercise/line-start';
import { inPixels } from '@/shared/exercise/sizes';
import { idSchema } from '@/shared/schemas/id';
import type { Spacing } from '@/shared/schemas/spacing';
import { measureLine, responseHints, responsePoint, type SetSpecimen } from '@/shared/scoring';
import { sayFinding } from '@/shared/wording/finding-words';
import { spacingOf } from '@/lib/rows/spacing';
import { benchSeat } from './bench';

/**
 * The lines of an exercise that have one text in several sizes, weights or faces, as the actor has set them (staff: in
 * their trials). How the gaps respond to size and weight is included only where the bench may show evenness. Without
 * `text` the first such text; null where no text occurs twice. Errors: NOT_FOUND.
 */
export const getSameText = operation({
  name: 'get-same-text',
  allow: 'draft:keep',
  input: z.strictObject({ exerciseId: idSchema, text: z.optional(z.string().check(z.maxLength(400))) }),
  run: async (context, { exerciseId, text }) => {
    const { seat, student, settings, tells, figuresHidden, exercise, course, current } = await benchSeat(
      context,
      exerciseId,
    );
    const all = await currentLines(context.data, exerciseId);
    const texts = repeatedTexts(all);
    const shown = text === undefined ? texts[0] : texts.find((one) => one.text === text.normalize());
    if (!shown && text !== undefined) throw notFound();
    const lines = all
      .map((line, index) => ({ line, place: index + 1 }))
      .filter(({ line }) => line.text === shown?.text)
      .sort((one, other) => byFaceAndSize(one.line, other.line));
    const rows = await context.data.drafts.ofMember(
      seat.member.id,
      lines.map(({ line }) => line.id),
      student ? 'work' : 'trial',
    );
    const drafts = new Map(rows.map((row) => [row.specimenVersionId, row]));
    const set = lines.map(({ line, place }) => {
      const draft = drafts.get(line.id);
      const spacing = draft ? spacingOf(draft) : line.start;
      return { ...lineView(line), place, spacing, touched: !isUntouched(spacing, line.start) };
    });
    const mayTell = tells === 'evenness' || tells === 'everything';
    return {
      exercise,
      course,
      texts,
      text: shown?.text ?? null,
      student,
      lines: set,
      /** The round after which the plot will be available, if not yet; null if never. */
      shownAfter:
        !figuresHidden &&
        (settings.benchTellsAfterProof === 'evenness' || settings.benchTellsAfterProof === 'everything')
          ? (current?.number ?? null)
          : null,
      response: mayTell ? responseOf(lines.map(({ line }, index) => setSpecimen(line, set[index]!.spacing))) : null,
    };
  },
});

export type SameText = Awaited<ReturnType<typeof getSameText>>;

/** Texts that occur more than once, in the order of the exercise. */
function repeatedTexts(lines: readonly { text: string }[]): { text: string; count: number }[] {
  const counts = new Map<string, number>();
  for (const { text } of lines) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].flatMap(([text, count]) => (count > 1 ? [{ text, count }] : []));
}

/** Family, then weight, then size: related lines are adjacent, from light to bold and from small to large. */
function byFaceAndSize(one: CurrentLine, other: CurrentLine): number {
  const [a, b] = [one.pack.face, other.pack.face];
  return (
    order(a?.family ?? '', b?.family ?? '') ||
    order(a?.weight ?? 400, b?.weight ?? 400) ||
    inPixels(sizeAndGroundOf(one).size) - inPixels(sizeAndGroundOf(other).size)
  );
}

const order = <Value extends string | number>(one: Value, other: Value): number =>
  one < other ? -1 : one > other ? 1 : 0;

function responseOf(set: SetSpecimen[]) {
  const points = set.map(responsePoint);
  // Each is held against the next size of its face and against other weights and faces of its size, not all against
  // all.
  const near = ({ first, second }: { first: number; second: number }) =>
    second === first + 1 || points[first]!.pixels === points[second]!.pixels;
  return {
    points,
    hints: responseHints(set)
      .filter(near)
      .map(({ finding }) => sayFinding(finding).sentence),
  };
}

function setSpecimen(line: CurrentLine, spacing: Spacing): SetSpecimen {
  const { face } = line.pack;
  return {
    measure: measureLine(line.pack, spacing, sizeAndGroundOf(line)),
    family: face?.family ?? '',
    weight: face?.weight ?? 400,
    drawnFor: face?.drawnFor ?? null,
  };
}
