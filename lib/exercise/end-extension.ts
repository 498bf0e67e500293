import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { endExtensionInput } from '@/shared/schemas/exercise';

/** Takes a student's own due date away; the round's holds again. */
export const endExtension = operation({
  name: 'end-extension',
  allow: 'exercise:plan',
  input: endExtensionInput,
  run: async ({ data, now }, { extensionId }) => {
    const ended = await data.rounds.endExtension(extensionId);
    if (!ended) throw notFound();
    await data.audit.record(
      {
        courseId: ended.courseId,
        verb: 'extension ended',
        subject: `member:${ended.memberId}`,
        details: { round: ended.roundNumber },
      },
      now,
    );
    return { extensionId };
  },
});
