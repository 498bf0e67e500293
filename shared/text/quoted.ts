/**
 * A text in quotation marks. Double ones inside it become single, as in print.
 *
 * @example quoted('Totals of “AVA”') // '“Totals of ‘AVA’”'
 */
export const quoted = (text: string): string =>
  `“${text
    .replace(/“/g, '‘')
    .replace(/”/g, '’')
    .replace(/"([^"]*)"/g, '‘$1’')}”`;
