import { createHash } from 'node:crypto';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Pack } from '@/shared/schemas/pack';

/** The name of a pack: SHA-256 of its canonical JSON, as 64 hexadecimal digits. Equal packs have equal names. */
export function packHash(pack: Pack): string {
  return createHash('sha256').update(canonicalJson(pack)).digest('hex');
}
