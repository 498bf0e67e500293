import { parsePack } from '@/shared/schemas/parse-pack';
import type { Pack } from '@/shared/schemas/pack';

/** Packs never change, so one that was checked once is kept: reading a long exercise again costs no parsing. */
const kept = new Map<string, Pack>();
const most = 400;

/** The pack in a row, checked on the way out. */
export function readPack(sha: string, payload: string): Pack {
  const there = kept.get(sha);
  if (there) return there;
  const pack = parsePack(JSON.parse(payload));
  if (kept.size >= most) kept.delete(kept.keys().next().value!);
  kept.set(sha, pack);
  return pack;
}
