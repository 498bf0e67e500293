import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { spacingOf } from '@/lib/draft/spacing-of';
import { lateOf } from '@/lib/marking/late';
import { mayBeRead } from '@/lib/marking/may-be-read';
import { marksOfProof } from '@/lib/marking/marks-of-proof';
import { secondQueue } from '@/lib/marking/second-queue';
import { settingOf } from '@/lib/proof/measure-proof-line';
import { proofLineInput } from '@/shared/schemas/critique';
import { packSchema } from '@/shared/schemas/pack';
import { specimenDetailsSchema } from '@/shared/schemas/specimen';
import { sinceLastRound } from '@/shared/critique/since-last-round';
import { earlierNotes, mapsTo } from './earlier-notes';
import { secondSlot } from './mark-tasks';
import { myQueue } from './my-queue';
import { neighboursAmong, neighboursOf } from './neighbours';
import { noteView } from './note-view';
import { proofInHand } from './proof-in-hand';
import { queueOrder } from './queue-order';
import { shownAs, tokenOf } from './shown-as';
import { stockNotesAtHand } from './stock-notes';
import { acrossSpecimens } from './across-specimens';
import { withNamedAuthors } from '@/lib/reference/named-author';
import { comparisonOf, measureOf } from './stored';

/**
 * One line of one proof, with all that a marker works with there: what was measured and compared (shown when asked for),
 * notes, what was said before and how it has changed since, marks, and where to go next.
 */
export const showLine = operation({
  name: 'show-line',
  allow: 'critique:write',
  input: proofLineInput,
  run: async ({ data, now }, { proof: token, specimenId, section }) => {
    const hand = await proofInHand(data, token);
    const { proof, round, exercise, course, settings, task, hidden, slot, sight } = hand;
    const items = proof.items.toSorted(
      (one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position,
    );
    const item = items.find(({ specimenVersion }) => specimenVersion.specimenId === specimenId);
    const line = item && (await data.critique.line(item.id));
    if (!item || !line) throw notFound();
    const version = line.specimenVersion;
    const spacing = spacingOf(item);
    const late = lateOf(round, proof.member, proof.receivedAt);
    const comparedWith = line.comparisons[0]?.referenceSetId;
    const earlierItems = await data.critique.earlierItems(proof.memberId, specimenId, exercise.id, round.number);
    const [notes, earlier, previous, references, marks, stock, { order, done }, across] = await Promise.all([
      data.notes.ofItems([item.id]),
      earlierNotes(data, { proofItemIds: earlierItems, specimenId, versionId: version.id }, spacing),
      earlierItems[0] === undefined ? null : data.critique.earlierItem(earlierItems[0]),
      comparedWith ? data.critique.references(comparedWith, version.id) : [],
      marksOfProof(data, {
        exerciseId: exercise.id,
        proofId: proof.id,
        taskId: sight === 'none' ? null : (task?.id ?? null),
        tolerance: settings.tolerance,
        late,
      }),
      stockNotesAtHand(data, course.id, hand.me.id),
      queueOrder(data, hand, now),
      acrossSpecimens(data, items, item),
    ]);
    const [comparison] = await withNamedAuthors(data, [line.comparisons[0] ? comparisonOf(line.comparisons[0]) : null]);
    const own = { proofId: proof.id, alias: task?.alias ?? 'A student' };
    const here = !task ? token : slot === secondSlot ? task.alias : tokenOf(own, hidden);
    const mine = await myQueue(data, hand, order, section);
    const specimenIds = items.map(({ specimenVersion }) => specimenVersion.specimenId);
    const second = slot === secondSlot ? await secondQueue(data, hand, now) : null;
    const go = second
      ? neighboursAmong(
          second.map((place) => place.task.alias),
          { token: here, specimenId },
          specimenIds,
        )
      : await neighboursOf(data, hand, mine, { token: here, proofId: proof.id, specimenId }, specimenIds);
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title, state: round.state, begun: round.markingStartedAt !== null },
      proof: {
        token: here,
        number: proof.number,
        shownAs: shownAs({ name: proof.member.user?.name ?? null, alias: own.alias }, hidden),
        section: hidden ? null : (proof.member.section?.name ?? null),
        receivedAt: hidden ? null : proof.receivedAt.toISOString(),
        reasoning: proof.reasoning,
        counts: order.placeOf.has(proof.id),
      },
      line: {
        specimenId,
        specimenVersionId: version.id,
        text: version.text,
        place: items.indexOf(item) + 1,
        of: items.length,
        ...settingOf(version),
        remark: z.parse(specimenDetailsSchema, JSON.parse(version.details)).remark,
        tolerance: settings.tolerance,
      },
      personKey: hand.me.id,
      released: hand.released,
      mayChoose: hand.me.role === 'instructor',
      lines: items.map(({ specimenVersion }) => ({
        specimenId: specimenVersion.specimenId,
        text: specimenVersion.text,
      })),
      pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
      spacing,
      measure: line.measurements[0] ? measureOf(line.measurements[0]) : null,
      comparison: comparison ?? null,
      /** Hints on how the same text was set at other sizes, weights and in other faces. */
      across,
      references: references.map(({ author, slot, ...set }) => ({
        author: author.user?.name ?? 'A former teacher',
        slot,
        spacing: spacingOf(set),
      })),
      /** Only of the same version: another's pairs cannot be laid under this line. */
      previous:
        previous && previous.specimenVersionId === version.id
          ? { round: previous.proof.round.number, proof: previous.proof.number, spacing: spacingOf(previous) }
          : null,
      since: previous && {
        round: previous.proof.round.number,
        moved: sinceLastRound({
          then: spacingOf(previous),
          now: spacing,
          maps: (await mapsTo(data, specimenId, version.id))(previous.specimenVersionId),
          before: previous.comparisons[0] ? comparisonOf(previous.comparisons[0]) : null,
          after: comparison ?? null,
          notes: earlier.filter((note) => note.round === previous.proof.round.number),
        }),
      },
      notes: notes.filter((note) => mayBeRead(note, hand)).map((note) => noteView(note, hidden)),
      earlier,
      marks,
      stock,
      task: {
        state: task?.state === 'done' ? ('done' as const) : ('open' as const),
        mine: task?.markerId === hand.me.id,
        heldBy:
          task && task.markerId !== hand.me.id && task.leaseUntil !== null && task.leaseUntil > now
            ? (task.marker?.user?.name ?? 'another marker')
            : null,
      },
      /** Whether two mark this proof, in which of the two markings this is, and what may be seen of both. */
      two: { state: hand.two, slot, sight },
      go,
      queue: {
        ...(second
          ? {
              place: second.findIndex((place) => place.proofId === proof.id) + 1,
              of: second.length,
              done: second.filter((place) => place.task.state === 'done').length,
            }
          : { place: (mine.placeOf.get(proof.id) ?? -1) + 1, of: mine.counted.length, done }),
        skipped: mine.skipped.has(proof.id),
        section: mine.section && { id: mine.section.id, name: mine.section.name },
      },
    };
  },
});

export type CritiqueLine = Awaited<ReturnType<typeof showLine>>;
