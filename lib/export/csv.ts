import Papa from 'papaparse';

/**
 * Rows as CSV by RFC 4180: commas, CRLF, quotes where they are needed. A cell that a spreadsheet would take for a
 * formula (it begins with = + - @, their full-width forms, a tab or a line end) gets an apostrophe before it, as OWASP
 * advises against CSV injection. A byte order mark goes first, since spreadsheets read UTF-8 by it.
 */
export function csvOf(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  const text = Papa.unparse({ fields: [...head], data: rows.map((row) => row.map((cell) => cell ?? '')) }, { newline: '\r\n', escapeFormulae: formula });
  return `\uFEFF${text}\r\n`;
}

const formula = /^[=+\-@＝＋－＠\t\r\n]/;
