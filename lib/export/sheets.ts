import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { previewOf } from '@/lib/release/release';
import { findRelease } from '@/lib/release/released';
import { proofContext, roundContext } from '@/lib/review/context';
import { roundByNumber } from '@/shared/schemas/critique';
import { idSchema } from '@/shared/schemas/id';
import { classSetPdf } from './sheet/class-set-pdf';
import { paperSchema } from './sheet/paper';
import type { Sheet } from './sheet/sheet';
import { askForLicence, sheetOf } from './sheet/sheet-of';
import { sheetPdf } from './sheet/write-pdf';

/** What was released from a proof as a sheet of paper: to its student, and to those who teach. */
export const exportSheet = operation({
  name: 'export-sheet',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema, paper: paperSchema, licence: z._default(z.boolean(), false) }),
  run: async ({ data, actor, now }, { proofId, paper, licence }) => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const release = await findRelease(data, proofId, actor.kind === 'person' && proof.member.userId === actor.userId);
    if (!release) throw notFound();
    const mine = actor.kind === 'person' && proof.member.userId === actor.userId;
    const alias = mine ? null : await aliasOf(data, proofId);
    const who = alias ?? proof.member.user?.name ?? 'Erased person';
    const sheet = await sheetOf(data, proofId, { ...release, release, who, hidden: alias !== null });
    askForLicence(
      licence,
      sheet.lines.map((line) => line.licence),
    );
    return { pdf: sheetPdf(sheet, paper, now), name: `critique-round-${proof.round.number}-proof-${proof.number}.pdf` };
  },
});

/**
 * What would go out to one student as a sheet of paper, before it does; for those who release. It says that it is a
 * preview.
 */
export const exportSheetPreview = operation({
  name: 'export-sheet-preview',
  allow: 'release:make',
  input: z.extend(roundByNumber, { proof: idSchema, paper: paperSchema, licence: z._default(z.boolean(), false) }),
  run: async ({ data, now }, { paper, licence, ...which }) => {
    const { entry, snapshot } = await previewOf(data, which, now);
    const sheet = await sheetOf(data, entry.proofId, {
      snapshot,
      answers: {},
      release: null,
      who: entry.shownAs,
      hidden: entry.hidden,
    });
    askForLicence(
      licence,
      sheet.lines.map((line) => line.licence),
    );
    return { pdf: sheetPdf(sheet, paper, now), name: `critique-round-${which.roundNumber}-preview.pdf` };
  },
});

/**
 * Every sheet that was released in a round as one file, by name; for those who teach. What was not released is not in
 * it.
 */
export const exportClassSet = operation({
  name: 'export-class-set',
  allow: 'class:see',
  input: z.extend(roundByNumber, { paper: paperSchema, licence: z._default(z.boolean(), false) }),
  run: async ({ data, now }, { exerciseId, roundNumber, paper, licence }) => {
    const { round, exercise, course, hidden } = await roundContext(data, exerciseId, roundNumber);
    const released = await data.releases.numbersOf(round.id);
    if (released.size === 0)
      throw new AppError(
        'CONFLICT',
        `Nothing was released in round ${round.number} yet, so there are no sheets. A single one can be previewed on the page of the release.`,
      );
    const people = await data.markTasks.peopleOf([...released.keys()]);
    const aliases = hidden ? await data.markTasks.aliasesOf(exercise.id, [...released.keys()]) : null;
    const whoIs = (memberId: string) =>
      aliases === null ? (people.get(memberId)?.name ?? 'Erased person') : (aliases.get(memberId) ?? 'A student');
    const students = [...released]
      .map(([memberId, { proofId }]) => ({ who: whoIs(memberId), proofId }))
      .sort((one, other) => names.compare(one.who, other.who))
      .map(({ who, proofId }) => ({ who, read: () => readSheet(data, proofId, who, hidden) }));
    // The lines of one sheet represent all: a round's lines differ between students only in their versions.
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

/** What a student is called to those who teach while names are hidden; null where they may be named. */
async function aliasOf(data: ScopedData, proofId: string): Promise<string | null> {
  const { hidden, alias } = await proofContext(data, proofId);
  return hidden ? alias : null;
}

async function readSheet(data: ScopedData, proofId: string, who: string, hidden: boolean): Promise<Sheet> {
  const release = await findRelease(data, proofId, false);
  if (!release) throw notFound();
  return sheetOf(data, proofId, { ...release, release, who, hidden });
}
