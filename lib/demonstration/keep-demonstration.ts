import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { retryOnConflict } from '@/lib/data/retry';
import { readPack } from '@/lib/exercise/read-pack';
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
      if (!there) await data.demonstrations.create({ id: demonstrationId, specimenVersionId, authorId: member.id, title, recorded }, now);
      return { id: demonstrationId, exerciseId: version.specimen.exercise.id };
    }, 4),
});
