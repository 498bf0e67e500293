import { createHash } from 'node:crypto';
import * as z from 'zod/mini';
import { secondMarkingSchema, type SecondMarking } from '@/shared/schemas/second-marking';

/** What a round says about second marking; a round that says nothing wants none. */
export const secondMarkingOf = (round: { secondMarker: string }): SecondMarking =>
  z.parse(secondMarkingSchema, JSON.parse(round.secondMarker));

/**
 * Whether a second marker looks at a proof. A share is decided by a hash of the proof's id, which the server made when the
 * proof came: nobody can steer it, asking twice gives the same answer, and a larger share keeps every proof of a smaller one.
 */
export function isSampled(proofId: string, { which, percent }: SecondMarking): boolean {
  if (which === 'none') return false;
  return which === 'all' || placeInSample(proofId) < percent / 100;
}

/** From 0 to just under 1, the same for a proof for ever: the first 32 bits of a SHA-256. */
const placeInSample = (proofId: string): number =>
  createHash('sha256').update(`second marker of ${proofId}`).digest().readUInt32BE(0) / 2 ** 32;
