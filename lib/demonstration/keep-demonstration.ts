import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { isTaken, retryOnConflict } from '@/lib/data/retry';
import { readPack } from '@/lib/rows/specimen';
import { misfitOf } from '@/shared/demonstration/steps';
import { keepDemonstrationInput } from '@/shared/schemas/demonstration';

/** Keeps what was recorded on the bench. Nobody else in the course sees it but staff until it is shown. Sent again it is the same. */
export const keepDemonstration = operation({
  name: 'keep-demonstration',
  allow: 'reference:set',
  input: keepDemonstrationInput,
  run: ({ data, now }, { demonstrationId, specimenVersionId, title, recorded }) =>
    retryOnConflict(async () => {
      const version = await data.specimens.version(specimenVersionId);
      const member = version && (await data.exercises.myMember(version.specimen.exercise.courseId));
      if (!member) throw notFound();
      const misfit = misfitOf(recorded, readPack(version.packSha, version.pack.payload).letters.length - 1);
      if (misfit) throw new AppError('INVALID', `${misfit} The recording is still on your device.`);
      const there = await data.demonstrations.ownById(demonstrationId);
      if (!there) await make();
      return { id: demonstrationId, exerciseId: version.specimen.exercise.id };

      async function make(): Promise<void> {
        try {
          await data.demonstrations.create(
            { id: demonstrationId, specimenVersionId, authorId: member!.id, title, recorded },
            now,
          );
        } catch (error) {
          // The same recording came twice at once, or the id is somebody else's, which is answered like one that can't be.
          if (isTaken(error) && !(await data.demonstrations.ownById(demonstrationId))) throw notFound();
          if (!isTaken(error)) throw error;
        }
      }
    }),
});
