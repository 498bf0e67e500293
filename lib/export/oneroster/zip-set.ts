import { strToU8, zipSync } from 'fflate';
import { plainCsvOf } from '../csv';
import { columns, filesOfManifest, type FileName, type RosterSet } from './tables';

/** A set as one zip: its files and the manifest that names them. A file without rows is absent. `at` stamps the files in it. */
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
