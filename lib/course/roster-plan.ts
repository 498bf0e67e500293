import Papa from 'papaparse';
import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import { emailSchema, personNameSchema } from '@/shared/schemas/account';
import { leadsCourse, type Role, roles, sectionNameSchema } from '@/shared/schemas/course';
import { type RosterPlan, type RosterRow, type RosterUse, rosterUses } from '@/shared/schemas/roster';
import { counted } from '@/shared/text/number';

type Given = { courseId: string; text: string; columns: readonly RosterUse[] };

const most = 2000;

/** What a roster would do to the course in its present state: row by row, with every fault quoted. Writes nothing. */
export async function planRoster(data: ScopedData, { courseId, text, columns }: Given): Promise<RosterPlan> {
  const course = await data.courses.byId(courseId);
  if (!course) throw notFound();
  const read = readRoster(text, columns);
  const layout = { delimiter: read.delimiter, columns: read.columns, hasHead: read.hasHead };
  const unclear = whatIsUnclear(read);
  if (unclear)
    return {
      ...layout,
      unclear,
      rows: [],
      newSections: [],
      counts: { newPeople: 0, invited: 0, here: 0, removed: 0, faults: 0 },
    };
  const rows = read.rows.map((row) => checked(row, read));
  const known = await data.roster.people(
    courseId,
    rows.map(({ email }) => email),
  );
  const firstLine = new Map<string, number>();
  for (const row of rows) {
    const twin = firstLine.get(row.email);
    if (twin !== undefined && row.email !== '')
      fault(row, `“${row.email}” is already on line ${twin}. Remove one of the two lines.`);
    else firstLine.set(row.email, row.line);
    if (row.becomes === 'fault') continue;
    const person = known.get(row.email);
    if (!person) {
      if (row.name === '')
        fault(row, `“${row.email}” has no name, and there is no account with this address yet. Add the name.`);
      continue;
    }
    if (!person.member) row.becomes = 'invited';
    else if (person.member.removed)
      settle(
        row,
        'was removed',
        'Was removed from this course, so the roster does not let them in again. They can be put back on their page.',
      );
    else
      settle(
        row,
        'here already',
        person.member.role === row.role ? null : `Stays ${person.member.role}: a roster doesn’t change roles.`,
      );
    if (row.becomes === 'invited' && row.name !== '' && person.name !== row.name)
      row.says.push('Has an account; the name stays as it is there.');
  }
  const sections = new Map(course.sections.map(({ name }) => [keyOf(name), name]));
  const wanted = rows
    .filter(({ becomes }) => becomes === 'new person' || becomes === 'invited')
    .map(({ section }) => section)
    .filter((section) => section !== '' && !sections.has(keyOf(section)));
  const newSections = [...new Map(wanted.toReversed().map((section) => [keyOf(section), section])).values()].sort();
  const count = (what: RosterRow['becomes']) => rows.filter(({ becomes }) => becomes === what).length;
  return {
    ...layout,
    unclear: null,
    rows,
    newSections,
    counts: {
      newPeople: count('new person'),
      invited: count('invited'),
      here: count('here already'),
      removed: count('was removed'),
      faults: count('fault'),
    },
  };
}

/** Sections of one name in other letters are one. */
export const keyOf = (section: string): string => section.normalize('NFC').toLowerCase();

function whatIsUnclear({ columns, rows }: ReadRoster): string | null {
  const has = (use: RosterUse) => columns.some((column) => column.use === use);
  const twice = columns.find(
    ({ use }, index) => use !== 'ignored' && columns.findIndex((other) => other.use === use) !== index,
  );
  if (rows.length === 0) return 'There is no row under the names of the columns.';
  if (rows.length > most) return `This has ${counted(rows.length, 'row')}; a roster can have at most ${most}.`;
  if (twice) return `Two columns are chosen as ${twice.use}. Choose one of them.`;
  if (!has('email'))
    return 'No column is clearly the e-mail address. Say below which one it is; rows without an address can’t be imported.';
  if (!has('name') && !has('first name') && !has('last name'))
    return 'No column is clearly the name. Say below which one it is.';
  return null;
}

function checked({ line, cells }: ReadRoster['rows'][number], { columns }: ReadRoster): RosterRow {
  const cell = (use: RosterUse) => cells[columns.findIndex((column) => column.use === use)] ?? '';
  const typedName = cell('name') || [cell('first name'), cell('last name')].filter((part) => part !== '').join(' ');
  const row: RosterRow = {
    line,
    name: typedName,
    email: cell('email'),
    role: 'student',
    section: cell('section'),
    becomes: 'new person',
    says: [],
  };
  if (row.email === '')
    fault(
      row,
      `${typedName === '' ? 'This row' : `“${typedName}”`} has no e-mail address. Add it, or take the line out.`,
    );
  else row.email = parsed(row, emailSchema, row.email);
  if (typedName !== '') row.name = parsed(row, personNameSchema, typedName);
  if (row.section !== '') row.section = parsed(row, sectionNameSchema, row.section);
  const role = cell('role').toLowerCase();
  const known = roles.find((one) => roleWords[one].includes(role));
  if (known && leadsCourse(known))
    fault(row, `“${cell('role')}”: instructors are not made by a roster. Invite them by a join link of their own.`);
  else if (!known)
    fault(row, `“${cell('role')}” is no role here. Write student or assistant, or leave it empty for a student.`);
  else row.role = known;
  return row;
}

/** What people write for a role in a roster, in small letters; empty for a student. */
const roleWords: Record<Role, readonly string[]> = {
  student: ['', 'student', 'learner'],
  assistant: ['assistant', 'teaching assistant', 'ta'],
  instructor: ['instructor', 'teacher', 'lecturer', 'professor'],
};

function parsed(row: RosterRow, schema: z.ZodMiniType<string>, value: string): string {
  const result = z.safeParse(schema, value);
  if (result.success) return result.data;
  fault(row, `“${value.length > 60 ? `${value.slice(0, 57)}…` : value}”: ${result.error.issues[0]!.message}`);
  return value;
}

function fault(row: RosterRow, message: string): void {
  row.becomes = 'fault';
  row.says.push(message);
}

function settle(row: RosterRow, becomes: RosterRow['becomes'], message: string | null): void {
  row.becomes = becomes;
  if (message) row.says.push(message);
}

/** A roster as typed: cells trimmed, each row with the line it begins on. */
type ReadRoster = {
  delimiter: string;
  hasHead: boolean;
  columns: { head: string; example: string; use: RosterUse }[];
  rows: { line: number; cells: string[] }[];
};

/** How the columns of a class list are called in plain English, small letters, without marks between. */
const names: Record<Exclude<RosterUse, 'ignored'>, readonly string[]> = {
  email: ['email', 'emailaddress', 'mail', 'mailaddress', 'address', 'schoolemail', 'studentemail'],
  name: ['name', 'fullname', 'student', 'studentname', 'person', 'displayname'],
  'first name': ['firstname', 'givenname', 'givennames', 'forename', 'first', 'preferredname'],
  'last name': ['lastname', 'surname', 'familyname', 'last'],
  role: ['role'],
  section: ['section', 'group', 'sectionname', 'tutorial', 'class', 'classgroup'],
};

/** Reads a roster: notices the delimiter and the head, and takes each column for what its name, or the person, says. */
export function readRoster(text: string, chosen: readonly RosterUse[]): ReadRoster {
  const { data, meta } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
    delimitersToGuess: [',', ';', '\t', '|'],
  });
  let line = 1;
  const all = data
    .map((cells) => {
      const row = { line, cells: cells.map((cell) => cell.trim()) };
      // A cell between quotes may hold line ends.
      line += 1 + cells.join('').split('\n').length - 1;
      return row;
    })
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const hasHead = all.length > 0 && !all[0]!.cells.some((cell) => cell.includes('@'));
  const head = hasHead ? all[0]!.cells : [];
  const rows = hasHead ? all.slice(1) : all;
  const width = Math.max(0, ...all.map(({ cells }) => cells.length));
  const used = new Set<RosterUse>();
  const columns = Array.from({ length: width }, (_, index) => {
    const guessed =
      chosen.length > 0 ? (chosen[index] ?? 'ignored') : useOf(head[index] ?? '', rows[0]?.cells[index] ?? '', hasHead);
    const use = used.has(guessed) && chosen.length === 0 ? 'ignored' : guessed;
    used.add(use);
    return { head: head[index] ?? '', example: rows[0]?.cells[index] ?? '', use };
  });
  return { delimiter: meta.delimiter, hasHead, columns, rows };
}

function useOf(head: string, example: string, hasHead: boolean): RosterUse {
  if (!hasHead) return example.includes('@') ? 'email' : 'ignored';
  const bare = head.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  return rosterUses.find((use) => use !== 'ignored' && names[use].includes(bare)) ?? 'ignored';
}
