import { buildPack } from '@/lib/face/build-pack';
import type { Pack } from '@/shared/schemas/pack';

/** The line of the first visit: two gaps that are plainly wrong, one of them to be found. Words and face are our own choice. */
const text = 'HAVEN';
const face = 'source-serif-4-400';

let built: Promise<Pack> | undefined;

/** The pack of the guided line, built once per process. */
export function guidedLinePack(): Promise<Pack> {
  built ??= buildPack({ kind: 'catalogue', key: face }, text).catch((error: unknown) => {
    built = undefined;
    throw error;
  });
  return built;
}
