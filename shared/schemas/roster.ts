import * as z from 'zod/mini';

/** What a column of a roster can be. */
export const rosterUses = ['ignored', 'name', 'first name', 'last name', 'email', 'role', 'section'] as const;
export type RosterUse = (typeof rosterUses)[number];

/** The text of a roster as it was pasted or read from a file. */
export const rosterTextSchema = z
  .string()
  .check(
    z.minLength(1, 'Paste the rows of the roster, or choose a file.'),
    z.maxLength(500_000, 'This is more than a roster of a course can be (500,000 characters). Is it the right file?'),
  );

/** The meaning of each column, where a person chose it; empty where the columns' names are used. */
export const rosterColumnsSchema = z
  .array(z.enum(rosterUses, 'Choose what the column is from the list.'))
  .check(z.maxLength(60, 'A roster can have at most 60 columns.'));

/** What will happen with one row. `fault` says why nothing can be imported until it is corrected. */
export type RosterRow = {
  /** In the text, from 1. */
  line: number;
  name: string;
  email: string;
  role: string;
  section: string;
  becomes: 'new person' | 'invited' | 'here already' | 'was removed' | 'fault';
  /** For the person who imports: faults and remarks. */
  says: string[];
};

/** What the importer sees before anything is written. */
export type RosterPlan = {
  delimiter: string;
  columns: { head: string; example: string; use: RosterUse }[];
  hasHead: boolean;
  /** What keeps the whole of it from being imported, besides faults of rows. */
  unclear: string | null;
  rows: RosterRow[];
  newSections: string[];
  counts: { newPeople: number; invited: number; here: number; removed: number; faults: number };
};

/**
 * A link for one person of a roster, by which they set their password or join with the account they have; shown once.
 */
export type RosterLink = { name: string; email: string; address: string };
