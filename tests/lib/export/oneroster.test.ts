import { unzipSync, strFromU8 } from 'fflate';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { newId } from '@/lib/data/ids';
import { exportOneRoster, splitName } from '@/lib/export/oneroster';
import { fillWorld, type Ids } from '../../access/fill-world';
import { describeOnBothDatabases } from '../../fixtures/databases';
import { callerIn } from '../../fixtures/world-callers';

const now = new Date('2027-03-08T10:00:00Z');

/**
 * Header rows as in the tables of 1EdTech, “OneRoster: CSV Binding” 1.2.1 (22 August 2023), section 3
 * (https://www.imsglobal.org/spec/oneroster/v1p2/bind/csv); checked against two independent public transcriptions of
 * them.
 */
const headers: Record<string, string> = {
  'academicSessions.csv': 'sourcedId,status,dateLastModified,title,type,startDate,endDate,parentSourcedId,schoolYear',
  'categories.csv': 'sourcedId,status,dateLastModified,title,weight',
  'classes.csv':
    'sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods',
  'courses.csv':
    'sourcedId,status,dateLastModified,schoolYearSourcedId,title,courseCode,grades,orgSourcedId,subjects,subjectCodes',
  'enrollments.csv':
    'sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate',
  'lineItems.csv':
    'sourcedId,status,dateLastModified,title,description,assignDate,dueDate,classSourcedId,categorySourcedId,academicSessionSourcedId,resultValueMin,resultValueMax,schoolSourcedId',
  'manifest.csv': 'propertyName,value',
  'orgs.csv': 'sourcedId,status,dateLastModified,name,type,identifier,parentSourcedId',
  'results.csv':
    'sourcedId,status,dateLastModified,lineItemSourcedId,studentSourcedId,scoreStatus,score,scoreDate,comment,textScore,classSourcedId,inProgress,incomplete,late,missing',
  'roles.csv':
    'sourcedId,status,dateLastModified,userSourcedId,roleType,role,beginDate,endDate,orgSourcedId,userProfileSourcedId',
  'users.csv':
    'sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password,userMasterIdentifier,preferredGivenName,preferredMiddleName,preferredFamilyName,primaryOrgSourcedId,pronouns',
};

/**
 * What the same tables allow, and which cells may not be empty in a bulk set. Enumerations as there; scoreStatus from
 * memory of its table.
 */
const allowed: Record<string, Record<string, RegExp>> = {
  'academicSessions.csv': {
    sourcedId: /./,
    title: /./,
    type: /^(gradingPeriod|semester|schoolYear|term)$/,
    startDate: /^\d{4}-\d\d-\d\d$/,
    endDate: /^\d{4}-\d\d-\d\d$/,
    schoolYear: /^\d{4}$/,
  },
  'categories.csv': { sourcedId: /./, title: /./ },
  'classes.csv': {
    sourcedId: /./,
    title: /./,
    classType: /^(homeroom|scheduled)$/,
    courseSourcedId: /./,
    schoolSourcedId: /./,
    termSourcedIds: /./,
  },
  'courses.csv': { sourcedId: /./, title: /./, orgSourcedId: /./ },
  'enrollments.csv': { sourcedId: /./, role: /^(administrator|proctor|student|teacher)$/, primary: /^(true|false|)$/ },
  'lineItems.csv': {
    sourcedId: /./,
    title: /./,
    assignDate: /^\d{4}-\d\d-\d\d$/,
    dueDate: /^\d{4}-\d\d-\d\d$/,
    resultValueMin: /^0$/,
    resultValueMax: /^100$/,
  },
  'orgs.csv': { sourcedId: /./, name: /./, type: /^(department|school|district|local|state|national)$/ },
  'results.csv': {
    sourcedId: /./,
    scoreStatus: /^(exempt|fully graded|not submitted|partially graded|submitted)$/,
    score: /^(\d+(\.\d+)?|)$/,
    scoreDate: /^\d{4}-\d\d-\d\d$/,
    late: /^(true|false|)$/,
    missing: /^(true|false|)$/,
    inProgress: /^(true|false|)$/,
    incomplete: /^(true|false|)$/,
  },
  'roles.csv': { sourcedId: /./, roleType: /^(primary|secondary)$/, role: /^(student|teacher)$/ },
  'users.csv': { sourcedId: /./, enabledUser: /^(true|false)$/, username: /./, givenName: /./, familyName: /./ },
};

/** Where each reference leads, by the standard's matrix of dependencies. */
const references: [file: string, column: string, to: string][] = [
  ['courses.csv', 'orgSourcedId', 'orgs.csv'],
  ['classes.csv', 'courseSourcedId', 'courses.csv'],
  ['classes.csv', 'schoolSourcedId', 'orgs.csv'],
  ['classes.csv', 'termSourcedIds', 'academicSessions.csv'],
  ['users.csv', 'primaryOrgSourcedId', 'orgs.csv'],
  ['roles.csv', 'userSourcedId', 'users.csv'],
  ['roles.csv', 'orgSourcedId', 'orgs.csv'],
  ['enrollments.csv', 'classSourcedId', 'classes.csv'],
  ['enrollments.csv', 'schoolSourcedId', 'orgs.csv'],
  ['enrollments.csv', 'userSourcedId', 'users.csv'],
  ['lineItems.csv', 'classSourcedId', 'classes.csv'],
  ['lineItems.csv', 'categorySourcedId', 'categories.csv'],
  ['lineItems.csv', 'academicSessionSourcedId', 'academicSessions.csv'],
  ['lineItems.csv', 'schoolSourcedId', 'orgs.csv'],
  ['results.csv', 'lineItemSourcedId', 'lineItems.csv'],
  ['results.csv', 'studentSourcedId', 'users.csv'],
  ['results.csv', 'classSourcedId', 'classes.csv'],
];

describeOnBothDatabases('marks as a OneRoster set', (suite) => {
  let ids: Ids;
  let texts: Record<string, string>;
  const rowsOf = (file: string) =>
    Papa.parse<Record<string, string>>(texts[file]!, { delimiter: ',', header: true, skipEmptyLines: true }).data;
  const exported = async () => {
    const { zip, name } = await exportOneRoster(
      callerIn(ids)('instructor'),
      { exerciseId: ids.exercise, roundNumber: 1 },
      { now },
    );
    expect(name).toBe('oneroster-round-1.zip');
    return Object.fromEntries(Object.entries(unzipSync(zip)).map(([file, bytes]) => [file, strFromU8(bytes)]));
  };
  beforeAll(async () => {
    ids = await fillWorld(suite.db, now);
    await suite.db.user.update({ where: { id: ids.users.student }, data: { name: '=SUM(1,2) "Bo", O’Neil' } });
    await suite.db.externalRef.create({
      data: {
        id: newId(),
        issuer: 'https://sis.school.example',
        deployment: '',
        kind: 'user',
        externalId: 'student-0042',
        localId: ids.users.student,
        createdAt: now,
      },
    });
    texts = await exported();
  });

  it('has the standard’s files and header rows, by RFC 4180, without byte order mark or guard', () => {
    expect(Object.keys(texts).sort()).toEqual(Object.keys(headers).sort());
    for (const [file, head] of Object.entries(headers)) {
      expect(texts[file]!.startsWith(`${head}\r\n`), file).toBe(true);
      expect(texts[file]!.endsWith('\r\n')).toBe(true);
      expect(texts[file]!.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    }
    expect(texts['users.csv']).toContain('"=SUM(1,2) ""Bo"",",O’Neil,');
  });

  it('holds only what the standard’s tables allow, and leaves empty what is for sets of changes', () => {
    for (const [file, columns] of Object.entries(allowed)) {
      const rows = rowsOf(file);
      expect(rows.length, file).toBeGreaterThan(0);
      expect(new Set(rows.map(({ sourcedId }) => sourcedId)).size).toBe(rows.length);
      for (const row of rows) {
        for (const [column, pattern] of Object.entries(columns))
          expect(row[column], `${file} ${column}`).toMatch(pattern);
        expect([row.status, row.dateLastModified]).toEqual(['', '']);
      }
    }
  });

  it('has no reference that leads nowhere', () => {
    for (const [file, column, to] of references) {
      const there = new Set(rowsOf(to).map(({ sourcedId }) => sourcedId));
      for (const row of rowsOf(file)) expect(there.has(row[column]!), `${file} ${column} ${row[column]}`).toBe(true);
    }
  });

  it('says in the manifest what is there', () => {
    const manifest = new Map(rowsOf('manifest.csv').map(({ propertyName, value }) => [propertyName, value]));
    expect(manifest.get('manifest.version')).toBe('1.0');
    expect(manifest.get('oneroster.version')).toBe('1.2');
    // 21 files by the standard, with version of manifest and standard, name and code of the source.
    expect(manifest.size).toBe(25);
    for (const [name, value] of manifest)
      if (name!.startsWith('file.')) expect(value, name).toBe(`${name!.slice(5)}.csv` in texts ? 'bulk' : 'absent');
  });

  it('gives what was released, under the other system’s id, and nothing else', async () => {
    expect(rowsOf('results.csv')).toMatchObject([
      {
        studentSourcedId: 'student-0042',
        scoreStatus: 'fully graded',
        score: '50',
        scoreDate: '2027-03-01',
        late: 'false',
      },
    ]);
    expect(
      rowsOf('users.csv')
        .map(({ username }) => username)
        .sort(),
    ).toEqual([
      'assistant@school.example',
      'instructor@school.example',
      'otherstudent@school.example',
      'student@school.example',
    ]);
    expect(await suite.db.auditEvent.count({ where: { verb: 'marks exported', actorId: ids.users.instructor } })).toBe(
      1,
    );
    // Marks that were given since and not released change nothing.
    await suite.db.mark.updateMany({ where: { id: ids.mark }, data: { level: 2 } });
    expect((await exported())['results.csv']).toBe(texts['results.csv']);
  });
});

describe('names in two parts', () => {
  it('take the last word for the family name, and leave neither part empty', () => {
    expect(splitName('Ada van der Brook')).toEqual({ givenName: 'Ada van der', familyName: 'Brook' });
    expect(splitName('Mira')).toEqual({ givenName: 'Mira', familyName: 'Mira' });
  });
});
