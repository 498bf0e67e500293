type Cell = string | number | null;

/**
 * Rows as CSV by RFC 4180: commas, CRLF, quotes where they are needed. A cell that a spreadsheet would take for a
 * formula (it begins with = + - @, their full-width forms, a tab or a line end) gets an apostrophe before it, as OWASP
 * advises against CSV injection; numbers stay numbers. A byte order mark goes first, since spreadsheets read UTF-8 by
 * it.
 */
export function csvOf(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return `\uFEFF${csvRows([head, ...rows])}`;
}

/** More rows of such a file, to be written after what is there. */
export const csvRows = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');

/** Rows as CSV by RFC 4180 for a program: every cell is what it says, without guards and without a byte order mark. */
export function plainCsvOf(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [head, ...rows]
    .map((row) => `${row.map((cell) => quoted(cell === null ? '' : String(cell))).join(',')}\r\n`)
    .join('');
}

const formula = /^[=+\-@＝＋－＠\t\r\n]/;
const toBeQuoted = /[",\r\n]|^\s|\s$/;

function field(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = formula.test(cell) ? `'${cell}` : cell;
  return quoted(text);
}

const quoted = (text: string): string => (toBeQuoted.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
