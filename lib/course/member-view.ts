import type { MemberRow } from '@/lib/data/members';
import { type Accommodations, accommodationsSchema, roleSchema } from '@/shared/schemas/course';
import { parse } from 'zod/mini';

/**
 * One person as those who teach see them. Accommodations tell of needs that are nobody else's business: assistants see
 * what they must act on (that there is more time), the instructor sees them all.
 */
export function memberView(member: MemberRow, seenBy: string, sections: readonly { id: string; name: string }[]) {
  const accommodations = readAccommodations(member.accommodations);
  return {
    id: member.id,
    name: member.user?.name ?? '',
    email: member.user?.emailNorm ?? '',
    role: parse(roleSchema, member.role),
    sectionId: member.sectionId,
    section: sections.find(({ id }) => id === member.sectionId)?.name ?? null,
    joinedAt: member.joinedAt,
    removedAt: member.removedAt,
    mayMakeCourses: member.user?.mayCreateCourses ?? false,
    accommodations: seenBy === 'instructor' ? accommodations : { moreTime: accommodations.moreTime },
  };
}

/** @throws ZodError when the stored text is not what was written: better a stop than a student's needs forgotten. */
export function readAccommodations(stored: string): Accommodations {
  return parse(accommodationsSchema, JSON.parse(stored));
}
