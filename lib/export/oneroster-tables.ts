import { strToU8, zipSync } from 'fflate';
import { plainCsvOf } from './file';

/**
 * The files of a OneRoster 1.2 set and their columns, in the order of the standard's tables.
 * 1EdTech, “OneRoster: CSV Binding”, version 1.2.1, final release of 22 August 2023
 * (https://www.imsglobal.org/spec/oneroster/v1p2/bind/csv). Only the files that a set of marks needs have columns here.
 */
const columns = {
  academicSessions: [
    'sourcedId',
    'status',
    'dateLastModified',
    'title',
    'type',
    'startDate',
    'endDate',
    'parentSourcedId',
    'schoolYear',
  ],
  categories: ['sourcedId', 'status', 'dateLastModified', 'title', 'weight'],
  classes: [
    'sourcedId',
    'status',
    'dateLastModified',
    'title',
    'grades',
    'courseSourcedId',
    'classCode',
    'classType',
    'location',
    'schoolSourcedId',
    'termSourcedIds',
    'subjects',
    'subjectCodes',
    'periods',
  ],
  courses: [
    'sourcedId',
    'status',
    'dateLastModified',
    'schoolYearSourcedId',
    'title',
    'courseCode',
    'grades',
    'orgSourcedId',
    'subjects',
    'subjectCodes',
  ],
  enrollments: [
    'sourcedId',
    'status',
    'dateLastModified',
    'classSourcedId',
    'schoolSourcedId',
    'userSourcedId',
    'role',
    'primary',
    'beginDate',
    'endDate',
  ],
  lineItems: [
    'sourcedId',
    'status',
    'dateLastModified',
    'title',
    'description',
    'assignDate',
    'dueDate',
    'classSourcedId',
    'categorySourcedId',
    'academicSessionSourcedId',
    'resultValueMin',
    'resultValueMax',
    'schoolSourcedId',
  ],
  orgs: ['sourcedId', 'status', 'dateLastModified', 'name', 'type', 'identifier', 'parentSourcedId'],
  results: [
    'sourcedId',
    'status',
    'dateLastModified',
    'lineItemSourcedId',
    'studentSourcedId',
    'scoreStatus',
    'score',
    'scoreDate',
    'comment',
    'textScore',
    'classSourcedId',
    'inProgress',
    'incomplete',
    'late',
    'missing',
  ],
  roles: [
    'sourcedId',
    'status',
    'dateLastModified',
    'userSourcedId',
    'roleType',
    'role',
    'beginDate',
    'endDate',
    'orgSourcedId',
    'userProfileSourcedId',
  ],
  users: [
    'sourcedId',
    'status',
    'dateLastModified',
    'enabledUser',
    'username',
    'userIds',
    'givenName',
    'familyName',
    'middleName',
    'identifier',
    'email',
    'sms',
    'phone',
    'agentSourcedIds',
    'grades',
    'password',
    'userMasterIdentifier',
    'preferredGivenName',
    'preferredMiddleName',
    'preferredFamilyName',
    'primaryOrgSourcedId',
    'pronouns',
  ],
} as const;

type FileName = keyof typeof columns;
type Row<File extends FileName> = Partial<Record<(typeof columns)[File][number], string | number>>;
export type RosterSet = { [File in FileName]: Row<File>[] };

/** Every file that a manifest must mention, whether it is included (`bulk`) or not (`absent`). */
const filesOfManifest = [
  'academicSessions',
  'categories',
  'classes',
  'classResources',
  'courses',
  'courseResources',
  'demographics',
  'enrollments',
  'lineItemLearningObjectiveIds',
  'lineItems',
  'lineItemScoreScales',
  'orgs',
  'resources',
  'resultLearningObjectiveIds',
  'results',
  'resultScoreScales',
  'roles',
  'scoreScales',
  'userProfiles',
  'userResources',
  'users',
] as const;

/**
 * A set as one zip: its files and the manifest that names them. A file without rows is absent. `at` stamps the files in
 * it.
 */
export function zipSet(set: RosterSet, source: { name: string; code: string }, at: Date): Uint8Array<ArrayBuffer> {
  const names = (Object.keys(columns) as FileName[]).filter((name) => set[name].length > 0);
  const files = names.map((name) => [`${name}.csv`, csvOfFile(name, set[name])] as const);
  const manifest = plainCsvOf(
    ['propertyName', 'value'],
    [
      ['manifest.version', '1.0'],
      ['oneroster.version', '1.2'],
      ...filesOfManifest.map((name) => [`file.${name}`, (names as string[]).includes(name) ? 'bulk' : 'absent']),
      ['source.systemName', source.name],
      ['source.systemCode', source.code],
    ],
  );
  const entries = [['manifest.csv', manifest] as const, ...files].map(([name, text]) => [name, strToU8(text)] as const);
  return new Uint8Array(zipSync(Object.fromEntries(entries), { mtime: at }));
}

function csvOfFile(name: FileName, rows: readonly Partial<Record<string, string | number>>[]): string {
  return plainCsvOf(
    columns[name],
    rows.map((row) => columns[name].map((column) => row[column] ?? '')),
  );
}
