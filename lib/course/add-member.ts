import type { Role } from '@/lib/access/permissions';
import type { ScopedData } from '@/lib/data';
import { roleSchema } from '@/shared/schemas/course';
import { parse } from 'zod/mini';

type Into = { id: string; courseId: string; role: string; sectionId: string | null };

/** Puts a person into a course as a join link says, and writes it down. @throws P2002 when they are in it already. */
export async function addMember(data: ScopedData, link: Into, userId: string, now: Date): Promise<void> {
  const role: Role = parse(roleSchema, link.role);
  const member = await data.members.add({ courseId: link.courseId, userId, role, sectionId: link.sectionId }, now);
  await data.audit.record(
    {
      courseId: link.courseId,
      verb: 'member joined',
      subject: `member:${member.id}`,
      details: { role, sectionId: link.sectionId, joinLink: link.id },
    },
    now,
    userId,
  );
}
