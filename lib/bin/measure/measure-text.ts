import { writeFile } from 'node:fs/promises';
import { gzipSync } from 'node:zlib';
import { buildPack } from '@/lib/face/build-pack';
import { quoted } from '@/lib/face/face-error';
import { packHash } from '@/lib/face/pack-hash';
import { reportLine } from '@/shared/scoring';
import { sayFinding } from '@/shared/wording/finding-words';
import type { TextCommand } from './arguments';
import { CommandError } from './command-error';
import { drawProof } from './draw-proof';
import { faceSource } from './face-source';

/** Prints what is found in one line as a JSON object; with --proof it draws the line too. */
export async function measureText(command: TextCommand): Promise<void> {
  const pack = await buildPack(await faceSource(command), command.text);
  const spacing = { tracking: command.tracking, offsets: command.offsets ?? pack.builtIn.map(() => 0) };
  const measure = reportLine(pack, spacing, { size: command.size, ground: command.ground });
  const json = JSON.stringify(pack);
  const packed = {
    hash: packHash(pack),
    bytes: Buffer.byteLength(json),
    gzipBytes: gzipSync(json).byteLength,
    ligatures: pack.ligatures,
  };
  const findings = measure.findings.map((finding) => ({ ...finding, ...sayFinding(finding) }));
  process.stdout.write(`${JSON.stringify({ face: pack.face, pack: packed, ...measure, findings }, null, 2)}\n`);
  if (command.proof === null) return;
  await writeFile(command.proof, drawProof(pack, spacing, measure)).catch((error: Error) => {
    throw new CommandError(`The picture can't be written to ${quoted(command.proof ?? '', 200)}: ${error.message}.`);
  });
  process.stderr.write(
    `${command.proof} holds outlines of ${pack.face?.family ?? 'this face'}. Its licence says whether they may be passed on.\n`,
  );
}
