import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import type { ScopedData } from '@/lib/data';
import { readRelease } from '@/lib/release/read-release';
import { roundByNumber } from '@/shared/schemas/critique';
import { classSetPdf } from './sheet/class-set-pdf';
import { paperSchema } from './sheet/paper';
import type { Sheet } from './sheet/sheet';
import { askForLicence, sheetOf } from './sheet/sheet-of';

/** Every sheet that was released in a round as one file, by name; for those who teach. What was not released is not in it. */
export const exportClassSet = operation({
  name: 'export-class-set',
  allow: 'class:see',
  input: z.extend(roundByNumber, { paper: paperSchema, licence: z._default(z.boolean(), false) }),
  run: async ({ data, now }, { exerciseId, roundNumber, paper, licence }) => {
    const { round, exercise, course } = await roundInHand(data, exerciseId, roundNumber);
    const released = await data.releases.numbersOf(round.id);
    if (released.size === 0)
      throw new AppError(
        'CONFLICT',
        `Nothing was released in round ${round.number} yet, so there are no sheets. A single one can be previewed on the page of the release.`,
      );
    const people = await data.markTasks.peopleOf([...released.keys()]);
    const students = [...released]
      .map(([memberId, { proofId }]) => ({ who: people.get(memberId)?.name ?? 'Erased person', proofId }))
      .sort((one, other) => names.compare(one.who, other.who))
      .map(({ who, proofId }) => ({ who, read: () => readSheet(data, proofId, who) }));
    // The lines of one sheet stand for all: a round's lines are the same for everybody but for their versions.
    askForLicence(licence, licence ? [] : (await students[0]!.read()).lines.map((line) => line.licence));
    await data.audit.record(
      {
        courseId: course.id,
        verb: 'sheets exported',
        subject: `round:${round.id}`,
        details: { sheets: students.length },
      },
      now,
    );
    return {
      pdf: classSetPdf(
        { course: course.title, exercise: exercise.title, roundNumber: round.number, students },
        paper,
        now,
      ),
      name: `critique-sheets-round-${round.number}.pdf`,
    };
  },
});

const names = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

async function readSheet(data: ScopedData, proofId: string, who: string): Promise<Sheet> {
  const release = await readRelease(data, proofId, false);
  if (!release) throw notFound();
  return sheetOf(data, proofId, { ...release, release, who, hidden: false });
}
