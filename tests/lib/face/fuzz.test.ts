import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildPack, inspectFace } from '@/lib/face/build-pack';
import { findFace } from '@/lib/face/catalogue';
import { startFaceProcesses } from '@/lib/face/processes/pool';
import { FaceError } from '@/lib/face/face-error';
import { makeWoff, sfntOf } from '../../fixtures/faces/face-bytes';

/**
 * Damage of every kind gives a FaceError or the very pack of the sound file, and nothing else: never another number.
 * WOFF has no sum over its list of tables, nor have all WOFF2 files; such a face must say so (`sumHolds: false`).
 */
const TEXT = 'Waffe';
const files: Record<string, Uint8Array> = {};
beforeAll(async () => {
  await startFaceProcesses();
  files.ttf = await sfntOf('lato-400');
  files.woff = makeWoff(files.ttf);
  files.woff2 = new Uint8Array(readFileSync(findFace('lato-400').path));
  files.otf = new Uint8Array(readFileSync('node_modules/source-sans-pro/OTF/SourceSansPro-Black.otf'));
  files.variable = new Uint8Array(readFileSync(findFace('source-serif-4-opsz').path));
});

async function check(name: string, damagedBytes: Uint8Array): Promise<void> {
  const sound = await buildPack({ kind: 'file', bytes: files[name]! }, TEXT);
  const begun = performance.now();
  const answer = await buildPack({ kind: 'file', bytes: damagedBytes }, TEXT).catch((error: unknown) => error);
  expect(performance.now() - begun).toBeLessThan(8_000);
  if (answer instanceof FaceError) return;
  expect(answer).not.toBeInstanceOf(Error);
  const { sumHolds } = await inspectFace({ kind: 'file', bytes: damagedBytes });
  if (sumHolds) expect(measured(answer)).toEqual(measured(sound));
}

/** Names may be damaged without harm to a number: their tables have no part in measuring. */
function measured(pack: unknown): unknown {
  return { ...(pack as object), face: null };
}

describe.each(['ttf', 'otf', 'woff', 'woff2', 'variable'])('a damaged %s', (name) => {
  const place = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });

  it('cut off anywhere', async () => {
    await fc.assert(
      fc.asyncProperty(place, (share) =>
        check(name, files[name]!.subarray(0, Math.floor(share * files[name]!.length))),
      ),
      { numRuns: 25 },
    );
  });

  it('with bits turned', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(place, fc.integer({ min: 0, max: 7 })), { minLength: 1, maxLength: 4 }),
        (flips) => {
          const bytes = files[name]!.slice();
          for (const [share, bit] of flips) bytes[Math.floor(share * bytes.length)]! ^= 1 << bit;
          return check(name, bytes);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('with its first bytes turned, where the lists are', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: 330 }), fc.integer({ min: 0, max: 255 }), (at, value) => {
        const bytes = files[name]!.slice();
        bytes[at] = value;
        return check(name, bytes);
      }),
      { numRuns: 40 },
    );
  });
});

describe('bytes of no kind', () => {
  it('after each signature', async () => {
    const signatures = [
      [0, 1, 0, 0],
      [...Buffer.from('OTTO')],
      [...Buffer.from('ttcf')],
      [...Buffer.from('wOFF')],
      [...Buffer.from('wOF2')],
      [...Buffer.from('true')],
    ];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...signatures), fc.uint8Array({ maxLength: 400 }), async (signature, rest) => {
        await expect(
          buildPack({ kind: 'file', bytes: new Uint8Array([...signature, ...rest]) }, TEXT),
        ).rejects.toBeInstanceOf(FaceError);
      }),
      { numRuns: 60 },
    );
  });
});

describe('any text', () => {
  it('gives a pack or a FaceError', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 30 }), async (text) => {
        const answer = await buildPack({ kind: 'catalogue', key: 'lato-400' }, text).catch((error: unknown) => error);
        if (answer instanceof Error) expect(answer).toBeInstanceOf(FaceError);
        else
          expect((answer as { text: string }).text).toBe(
            text
              .normalize('NFC')
              .replace(/[\t\n\f\r ]+/g, ' ')
              .trim(),
          );
      }),
      { numRuns: 150 },
    );
  });
});
