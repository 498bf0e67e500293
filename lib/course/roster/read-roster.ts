import Papa from 'papaparse';
import { rosterUses, type RosterUse } from '@/shared/schemas/roster';

/** A roster as it stands in the text: cells trimmed, each row with the line it begins on. */
export type ReadRoster = {
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
