import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { listFaces } from '@/lib/face/catalogue';
import { projectRoot } from '@/lib/face/project-root';
import { readFace } from '@/lib/face/read-face';
import { compareReaders, fileHash } from '@/lib/face/second-reader';
import { answerHelp } from './help';

answerHelp(`npm run -s check-faces
  Has two readers look at every installed face and writes lib/face/agreed-files.json. For developers.`);

/**
 * Has both readers look at every installed face and writes down which files they agree on, so that a server need not
 * look again. Run after a face was added or its package changed; a face they disagree on ends the command.
 */
async function checkFaces(): Promise<void> {
  const agreed: [string, number][] = [];
  for (const { key, path } of listFaces()) {
    const bytes = readFileSync(path);
    const face = await readFace(bytes);
    const { letters, unchecked } = compareReaders(face.harfbuzz, face.font.face, face.tables);
    if (unchecked === null) agreed.push([fileHash(bytes), letters]);
    else process.stdout.write(`${key}: ${unchecked}\n`);
  }
  agreed.sort(([a], [b]) => (a < b ? -1 : 1));
  writeFileSync(
    join(projectRoot(), 'lib/face/agreed-files.json'),
    `${JSON.stringify(Object.fromEntries(agreed), null, 2)}\n`,
  );
  process.stdout.write(`Both readers agree on ${agreed.length} of ${listFaces().length} installed faces.\n`);
}

await checkFaces();
