import { beforeAll, describe, expect, it } from 'vitest';
import { exportReleasedNotes, exportRoundNotes } from '@/lib/export/notes';
import { letterPositions, type OutgoingNote, webAnnotations } from '@/lib/export/web-annotations';
import { fillWorld, type Ids } from '../../access/fill-world';
import { brokenRules } from '../../fixtures/annotation-rules';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { drawnPack } from '../../fixtures/drawn-pack';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

type Annotation = {
  id: string;
  motivation: string | string[];
  creator?: { name: string };
  created?: string;
  body: { value: string } | { value: string; purpose: string }[];
  target: { selector: [{ start: number; end: number }, { exact: string; prefix: string; suffix: string }] };
};
type Collection = { total: number; first: { items: Annotation[] } };

const note = (change: Partial<OutgoingNote>): OutgoingNote => ({
  id: '019a0000-0000-7000-8000-000000000001',
  fromPair: 1,
  toPair: 1,
  suggestion: null,
  specimenVersionId: '019a0000-0000-7000-8000-000000000002',
  pack: drawnPack('HOT AV'),
  page: 'https://type.school.example/proofs/1',
  hideStudent: false,
  entries: [
    { seq: 1, by: 'staff', author: 'Tobin Ashgrove', body: 'Closer.', replaces: null, at: '2027-03-05T10:00:00.000Z' },
  ],
  ...change,
});
const collected = (...notes: OutgoingNote[]) =>
  webAnnotations({
    id: 'https://type.school.example/api/exports/notes/1?round=1',
    label: 'Notes',
    now,
    notes,
  }) as Collection;
const selected = (change: Partial<OutgoingNote>) => collected(note(change)).first.items[0]!.target.selector;

describe('notes as Web Annotations', () => {
  it('select pair i as the text from letter i to the end of letter i + 1, by position and by quotation', () => {
    expect(selected({})).toEqual([
      { type: 'TextPositionSelector', start: 1, end: 3 },
      { type: 'TextQuoteSelector', exact: 'OT', prefix: 'H', suffix: ' AV' },
    ]);
    // The pair over the word space has the space in it.
    expect(selected({ fromPair: 2, toPair: 2 })).toMatchObject([{ start: 2, end: 5 }, { exact: 'T A' }]);
    expect(selected({ fromPair: 2, toPair: 3 })).toMatchObject([
      { start: 2, end: 6 },
      { exact: 'T AV', suffix: '' },
    ]);
    expect(selected({ fromPair: null, toPair: null })).toMatchObject([
      { start: 0, end: 6 },
      { exact: 'HOT AV', prefix: '', suffix: '' },
    ]);
  });

  it('count code points, not code units (4.2.5)', () => {
    const pack = {
      text: 'a\u{1D400}e\u0301 b',
      letters: [0, 1, 2, 3],
      glyphs: ['a', '\u{1D400}', 'e\u0301', 'b'].map((cluster) => ({ cluster, advance: 1, path: '' })),
    };
    expect(letterPositions(pack)).toEqual([
      { start: 0, end: 1 },
      { start: 1, end: 2 },
      { start: 2, end: 4 },
      { start: 5, end: 6 },
    ]);
    expect(() => letterPositions({ ...pack, text: 'axy' })).toThrow('is not the letter');
  });

  it('keep to the rules of the model: with suggestions, answers, nothing at all', () => {
    const answer = {
      seq: 2,
      by: 'student' as const,
      author: 'Ada Quayle',
      body: 'I see.',
      replaces: null,
      at: '2027-03-06T10:00:00.000Z',
    };
    const full = collected(
      note({ suggestion: [-12], entries: [...note({}).entries, answer] }),
      note({ id: '019a0000-0000-7000-8000-000000000003', fromPair: null, toPair: null }),
    );
    expect(brokenRules(full)).toEqual([]);
    expect(brokenRules(collected())).toEqual([]);
    expect(full.total).toBe(3);
    const [first, reply] = full.first.items;
    expect(first).toMatchObject({
      motivation: ['commenting', 'editing'],
      creator: { type: 'Person', name: 'Tobin Ashgrove' },
      created: '2027-03-05T10:00:00.000Z',
    });
    expect(JSON.parse((first!.body as { value: string }[])[1]!.value)).toEqual({
      unit: '1/1000 em',
      kind: 'offset',
      pairs: [{ pair: 1, offset: -12 }],
    });
    expect(reply).toMatchObject({ motivation: 'replying', target: first!.id, creator: { name: 'Ada Quayle' } });
  });

  it('break a rule where one is broken', () => {
    const wrong = collected(note({})) as unknown as { first: { items: { target: unknown; body: unknown }[] } };
    wrong.first.items[0]!.target = [];
    wrong.first.items[0]!.body = { type: 'TextualBody' };
    expect(brokenRules(wrong).map((rule) => rule.split(' ')[0])).toEqual(['3.1', '3.2.4']);
  });

  it('name no hidden student and no time of theirs', () => {
    const text = JSON.stringify(
      collected(
        note({
          hideStudent: true,
          entries: [
            ...note({}).entries,
            {
              seq: 2,
              by: 'student',
              author: 'Ada Quayle',
              body: 'I see.',
              replaces: null,
              at: '2027-03-06T10:00:00.000Z',
            },
          ],
        }),
      ),
    );
    for (const secret of ['Ada Quayle', '2027-03-06']) expect(text).not.toContain(secret);
  });
});

describeOnBothDatabases('notes taken out', (suite) => {
  let ids: Ids;
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
  });
  const as = (who: Parameters<ReturnType<typeof callerIn>>[0]) => callerIn(ids)(who);

  it('are all of a round for those who teach, and only what was released for a student', async () => {
    const all = await exportRoundNotes(as('assistant'), { exerciseId: ids.exercise, roundNumber: 2 }, { now });
    expect(brokenRules(all.annotations)).toEqual([]);
    expect(JSON.stringify(all.annotations)).toContain('Not released yet.');
    const own = await exportReleasedNotes(as('student'), { proofId: ids.proof }, { now });
    expect(brokenRules(own.annotations)).toEqual([]);
    expect((own.annotations as Collection).first.items[0]).toMatchObject({
      id: `urn:uuid:${ids.note}`,
      body: [{ value: 'A little closer.' }, { purpose: 'editing' }],
      creator: { name: 'The assistant' },
    });
    await expect(exportReleasedNotes(as('student'), { proofId: ids.nextProof }, { now })).rejects.toMatchObject({
      code: 'NOT_FOUND',
    });
    expect(await suite.db.auditEvent.count({ where: { verb: 'notes exported' } })).toBe(1);
  });

  it('lead to the alias where names are hidden', async () => {
    await suite.db.exercise.update({ where: { id: ids.exercise }, data: { settings: '{"namesHidden":true}' } });
    const { annotations } = await exportRoundNotes(
      as('instructor'),
      { exerciseId: ids.exercise, roundNumber: 2 },
      { now },
    );
    expect(JSON.stringify(annotations)).toContain('/critique/plain-otter/');
    for (const secret of [ids.nextProof, 'The student']) expect(JSON.stringify(annotations)).not.toContain(secret);
  });
});
