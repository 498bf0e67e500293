import { operation } from '@/lib/access/operation';
import { showDemonstrationInput } from '@/shared/schemas/demonstration';
import { changeDemonstration } from './change-demonstration';

/** Shows a demonstration to the course, or takes it back; both are written into the course's log, as for any reference. */
export const showDemonstration = operation({
  name: 'show-demonstration',
  allow: 'reference:set',
  input: showDemonstrationInput,
  run: async (context, { demonstrationId, version, shown }) => {
    const { courseId, ...changed } = await changeDemonstration(context, demonstrationId, version, {
      shownAt: shown ? context.now : null,
    });
    await context.data.audit.record(
      {
        courseId,
        verb: shown ? 'demonstration shown' : 'demonstration hidden',
        subject: `demonstration:${demonstrationId}`,
      },
      context.now,
    );
    return { ...changed, shown };
  },
});
