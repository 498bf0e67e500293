import { beforeEach, describe, expect, it, vi } from 'vitest';
import { systemCaller } from '@/lib/access/caller';
import { getPasswordLink } from '@/lib/account/password-links';
import { importRoster, previewRoster } from '@/lib/course/roster';
import { readRoster } from '@/lib/course/roster-plan';
import { sendWelcomes } from '@/lib/course/welcomes';
import { decodeText } from '@/shared/text/decode-bytes';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { addCourse, addMember, addPerson, visitor } from '../../fixtures/people';

const mail = vi.hoisted(() => ({ setUp: false, refuse: false, sent: [] as { to: string; text: string }[] }));
vi.mock('@/lib/mail/send', () => ({
  mailIsSetUp: () => mail.setUp,
  sendMail: async (letter: { to: string; text: string }) => {
    if (mail.refuse) throw new Error('The mail server is silent.');
    mail.sent.push(letter);
  },
}));

describe('reading a roster', () => {
  it.each([
    [',', 'Name,E-mail\nAda Quayle,ada@quayrow.example'],
    [';', 'Name;E-mail\nAda Quayle;ada@quayrow.example'],
    ['\t', 'Name\tE-mail\nAda Quayle\tada@quayrow.example'],
  ])('notices the delimiter %j', (delimiter, text) => {
    const read = readRoster(text, []);
    expect(read).toMatchObject({
      delimiter,
      hasHead: true,
      rows: [{ line: 2, cells: ['Ada Quayle', 'ada@quayrow.example'] }],
    });
    expect(read.columns.map(({ use }) => use)).toEqual(['name', 'email']);
  });

  it('knows columns by plain names, leaves others out, and lets a person say what they are', () => {
    const text = 'Surname,Given name,E-Mail Address,Student number,Group\nQuayle,Ada,ada@quayrow.example,77,Monday';
    expect(readRoster(text, []).columns.map(({ use }) => use)).toEqual([
      'last name',
      'first name',
      'email',
      'ignored',
      'section',
    ]);
    expect(readRoster(text, ['name', 'ignored', 'email']).columns.map(({ use }) => use)).toEqual([
      'name',
      'ignored',
      'email',
      'ignored',
      'ignored',
    ]);
  });

  it('counts lines of the text, over empty ones and cells with line ends in them', () => {
    const { rows } = readRoster(
      '\uFEFFname,email\n\n"Ada\nQuayle",ada@quayrow.example\nBo Finch,bo@quayrow.example\n',
      [],
    );
    expect(rows.map(({ line }) => line)).toEqual([3, 5]);
  });

  it('takes the first row for a person where it has an address in it', () => {
    expect(readRoster('Ada Quayle,ada@quayrow.example', [])).toMatchObject({
      hasHead: false,
      rows: [{ line: 1 }],
      columns: [{ use: 'ignored' }, { use: 'email' }],
    });
  });

  // Windows-1252: é is 0xE9, a dash 0x96 (Unicode's table for CP1252); neither is valid UTF-8 before a letter.
  it('decodes UTF-8 and Windows-1252, and says so where it had to guess', () => {
    expect(decodeText(new TextEncoder().encode('\uFEFFRenée'))).toEqual({ text: 'Renée', remark: null });
    const old = decodeText(Uint8Array.from([0x52, 0x65, 0x6e, 0xe9, 0x65, 0x20, 0x96]));
    expect(old.text).toBe('Renée –');
    expect(old.remark).toContain('Windows-1252');
  });
});

describeOnBothDatabases('importing a roster', (suite) => {
  let courseId: string;
  let instructor: Awaited<ReturnType<typeof addPerson>>;
  beforeEach(async () => {
    instructor = await addPerson(suite.db, { name: 'Tobin Ashgrove' });
    courseId = await addCourse(suite.db);
    await addMember(suite.db, courseId, instructor.id, 'instructor');
  });
  const unique = () => crypto.randomUUID().slice(0, 8);
  const preview = (text: string, columns: string[] = []) =>
    previewRoster(instructor.caller, { courseId, text, columns });
  const bring = (text: string, makeSections = true) =>
    importRoster(instructor.caller, { courseId, text, columns: [], makeSections });
  const people = () =>
    suite.db.member.findMany({
      where: { courseId, role: { not: 'instructor' } },
      include: { user: true, section: true },
    });

  it('says of every line what will happen, and quotes what is wrong with it', async () => {
    const [here, gone, known] = await Promise.all(
      ['Here', 'Gone', 'Known'].map((name) => addPerson(suite.db, { name })),
    );
    await addMember(suite.db, courseId, here!.id, 'student');
    const removed = await addMember(suite.db, courseId, gone!.id, 'student');
    await suite.db.member.update({ where: { id: removed }, data: { removedAt: new Date() } });
    const fresh = `${unique()}@quayrow.example`;
    const { rows, counts, columns } = await preview(
      [
        'Name,Mail,Role,Section,Shoe size',
        `New Person,${fresh},,Monday,44`,
        `Here,${here!.email},assistant,,`,
        `Gone,${gone!.email},,,`,
        `Known,${known!.email},Student,monday,`,
        'No Address,,,,',
        `Twice,${fresh.toUpperCase()},,,`,
        'Bad,not-an-address,,,',
        `Odd,odd-${fresh},janitor,,`,
        `Boss,boss-${fresh},instructor,,`,
        `,nameless-${fresh},,,`,
      ].join('\n'),
    );
    expect(columns.map(({ use }) => use)).toEqual(['name', 'email', 'role', 'section', 'ignored']);
    expect(rows.map(({ becomes }) => becomes)).toEqual([
      'new person',
      'here already',
      'was removed',
      'invited',
      'fault',
      'fault',
      'fault',
      'fault',
      'fault',
      'fault',
    ]);
    expect(rows.map(({ says }) => says[0] ?? '').slice(4)).toEqual([
      expect.stringContaining('“No Address” has no e-mail address'),
      expect.stringContaining(`“${fresh}” is already on line 2`),
      expect.stringContaining('“not-an-address”'),
      expect.stringContaining('“janitor” is no role here'),
      expect.stringContaining('join link'),
      expect.stringContaining('has no name'),
    ]);
    expect(rows[1]!.says[0]).toContain('Stays student');
    expect(counts).toEqual({ newPeople: 1, invited: 1, here: 1, removed: 1, faults: 6 });
    await expect(bring('Name,Mail\nBad,not-an-address')).rejects.toMatchObject({
      code: 'INVALID',
      fields: { text: expect.stringContaining('Line 2: “not-an-address”') },
    });
    expect(await suite.db.user.count({ where: { emailNorm: fresh } })).toBe(0);
  });

  it('says which column is missing instead of guessing', async () => {
    expect((await preview('Colour,Shape\nred,round')).unclear).toContain('No column is clearly the e-mail address');
    expect((await preview('Ada Quayle,ada@quayrow.example')).unclear).toContain('No column is clearly the name');
    expect((await preview('Ada Quayle,ada@quayrow.example', ['name', 'email'])).unclear).toBeNull();
  });

  it('makes people without a password, sections where that was confirmed, and a link each that works', async () => {
    const [one, two] = [`${unique()}@quayrow.example`, `${unique()}@quayrow.example`];
    const text = `first name;surname;email;section;role\nAda;Quayle;${one};Monday;\nBo;Finch;${two};monday;assistant`;
    await expect(bring(text, false)).rejects.toMatchObject({
      fields: { makeSections: expect.stringContaining('Monday') },
    });
    expect(await people()).toEqual([]);
    const { links, counts } = await bring(text);
    expect(counts).toMatchObject({ newPeople: 2, invited: 0 });
    const made = (await people()).sort((a, b) => (a.listName < b.listName ? -1 : 1));
    expect(
      made.map(({ role, listName, section, user }) => [
        role,
        listName,
        section?.name,
        user?.emailNorm,
        user?.passwordHash,
      ]),
    ).toEqual([
      ['student', 'ada quayle', 'Monday', one, null],
      ['assistant', 'bo finch', 'Monday', two, null],
    ]);
    expect(await suite.db.section.count({ where: { courseId } })).toBe(1);
    const token = links[0]!.address.split('/').at(-1);
    expect(await getPasswordLink(visitor(), { token })).toMatchObject({ name: 'Ada Quayle', email: one });
    expect(await suite.db.auditEvent.count({ where: { courseId, verb: 'member joined' } })).toBe(2);
    expect(await suite.db.auditEvent.count({ where: { courseId, verb: 'people imported' } })).toBe(1);
  });

  it('changes nothing the second time', async () => {
    const text = `name,email\nAda Quayle,${unique()}@quayrow.example\nBo Finch,${unique()}@quayrow.example`;
    await bring(text);
    const before = [
      await people(),
      await suite.db.auditEvent.count({ where: { courseId } }),
      await suite.db.oneTimeLink.count(),
    ];
    const again = await bring(text);
    expect(again).toMatchObject({ links: [], counts: { newPeople: 0, invited: 0, here: 2 } });
    expect([
      await people(),
      await suite.db.auditEvent.count({ where: { courseId } }),
      await suite.db.oneTimeLink.count(),
    ]).toEqual(before);
  });

  it('makes everybody once, however many import the same at the same moment', async () => {
    const text = `name,email,section\n${Array.from({ length: 12 }, (_, index) => `Person ${index},${unique()}-${index}@quayrow.example,${index % 2 ? 'Monday' : 'Tuesday'}`).join('\n')}`;
    const results = await Promise.all(Array.from({ length: 4 }, () => bring(text)));
    expect(results.map(({ counts }) => counts.newPeople).sort()).toEqual([0, 0, 0, 12]);
    expect(await people()).toHaveLength(12);
    expect(await suite.db.section.count({ where: { courseId } })).toBe(2);
  });

  it('writes to new people once, tries again for those whom the mail server refused, and not to those who left', async () => {
    const [one, two] = [`${unique()}@quayrow.example`, `${unique()}@quayrow.example`];
    Object.assign(mail, { setUp: true, refuse: true, sent: [] });
    const later = (hours: number) =>
      sendWelcomes(systemCaller('test'), {}, { now: new Date(Date.now() + hours * 3_600_000) });
    const tried = (attempts: number) =>
      expect
        .poll(
          () => suite.db.job.count({ where: { kind: 'welcome-letter', attempts, leaseUntil: null, doneAt: null } }),
          { timeout: 20_000 },
        )
        .toBe(2);
    try {
      expect(await bring(`name,email\nAda Quayle,${one}\nBo Finch,${two}`)).toMatchObject({ byMail: true, links: [] });
      await tried(1);
      // Nothing about a person is in the list of work.
      expect(JSON.stringify(await suite.db.job.findMany({ where: { kind: 'welcome-letter' } }))).not.toMatch(
        /quayrow|Quayle/,
      );
      mail.refuse = false;
      expect(await later(0.5)).toEqual({ letters: 0 });
      await suite.db.member.updateMany({ where: { user: { emailNorm: two } }, data: { removedAt: new Date() } });
      const results = await Promise.all([later(1.1), later(1.1), later(1.1)]);
      expect(results.reduce((sum, { letters }) => sum + letters, 0)).toBe(1);
      expect(mail.sent.map(({ to }) => to)).toEqual([one]);
      const token = /\/reset\/([\w-]+)/.exec(mail.sent[0]!.text)![1];
      expect(await getPasswordLink(visitor(), { token })).toMatchObject({ name: 'Ada Quayle', email: one });
      expect(await later(30)).toEqual({ letters: 0 });
    } finally {
      Object.assign(mail, { setUp: false, refuse: false, sent: [] });
    }
  });
});
