import { beforeAll, expect, it } from 'vitest';
import { exportClassSet, exportSheet, exportSheetPreview } from '@/lib/export/sheets';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { readPdf } from '../../fixtures/read-pdf';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

describeOnBothDatabases('critique sheets', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);
  const round = (roundNumber: number) => ({ exerciseId: ids.exercise, roundNumber });
  const words = async (pdf: Parameters<typeof readPdf>[0]) =>
    (await readPdf(pdf)).pages
      .map(({ text }) => text)
      .join('\n')
      .replaceAll('\u2009', ' ');

  it('hold what was released to a student: notes, marks, reasoning, name, date and round', async () => {
    const { pdf, name } = await exportSheet(as('student'), { proofId: ids.proof, licence: true }, { now });
    const text = await words(pdf);
    for (const said of [
      'First lines',
      'Round 1',
      'The student',
      'H and O looked open.',
      'A little closer.',
      'Suggested offset: HO −10 (sent −4)',
      'Evenness',
      'Mostly (2 of 3)',
      'total 50%',
      '1 Mar 2027, 11:00',
    ])
      expect(text).toContain(said);
    expect(name).toBe('critique-round-1-proof-1.pdf');
  });

  it('do not let outlines go before the licence was seen, and hold nothing of what is not released', async () => {
    await expect(exportSheet(as('student'), { proofId: ids.proof }, { now })).rejects.toMatchObject({
      code: 'INVALID',
    });
    await expect(exportSheet(as('student'), { proofId: ids.nextProof, licence: true }, { now })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    await expect(exportClassSet(as('assistant'), { ...round(2), licence: true }, { now })).rejects.toMatchObject({
      code: 'CONFLICT',
    });
  });

  it('are a preview before the release, without the name where names are hidden', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    const { pdf, name } = await exportSheetPreview(
      as('instructor'),
      { ...round(2), proof: 'plain-otter', licence: true },
      { now },
    );
    const text = await words(pdf);
    for (const said of ['quiet-heron', 'Not released', 'preview', 'Not released yet.']) expect(text).toContain(said);
    for (const secret of ['The student', 'received']) expect(`${text} ${name}`).not.toContain(secret);
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{}' } });
  });

  it('come as one set for those who teach, which is written down', async () => {
    const { pdf, name } = await exportClassSet(
      as('assistant'),
      { ...round(1), paper: 'letter', licence: true },
      { now },
    );
    const { bookmarks, pages } = await readPdf(pdf);
    expect(bookmarks).toEqual(['The student']);
    expect([pages[0]!.width, pages[0]!.height, name]).toEqual([792, 612, 'critique-sheets-round-1.pdf']);
    expect(await suite.db.auditEvent.count({ where: { verb: 'sheets exported', actorId: ids.users.assistant } })).toBe(
      1,
    );
  });
});
