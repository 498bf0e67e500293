import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

let found: string | undefined;

/**
 * The folder of the project: the nearest one at or above the working directory whose package.json is Kerncrit's.
 * Not taken from the module's own address, which points into the build output under Next.
 */
export function projectRoot(): string {
  found ??= climb(process.cwd());
  return found;
}

function climb(from: string): string {
  for (let folder = from; ; folder = dirname(folder)) {
    const manifest = join(/* turbopackIgnore: true */ folder, 'package.json');
    if (existsSync(manifest) && (JSON.parse(readFileSync(manifest, 'utf8')) as { name?: string }).name === 'kerncrit')
      return folder;
    if (dirname(folder) === folder)
      throw new Error(`No Kerncrit project at or above ${from}. Start the command in the project's folder.`);
  }
}
