import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import { roundByNumber } from '@/shared/schemas/critique';
import { settingOf } from '@/lib/reference/compare';

/** The specimens of a round, how many sent each, and which of them are on an open wall. */
export const listWalls = operation({
  name: 'list-walls',
  allow: 'wall:run',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const { round, exercise, course } = await roundInHand(data, exerciseId, roundNumber);
    const [specimens, walls, tallies] = await Promise.all([
      data.specimens.ofExercise(exerciseId),
      data.walls.openOf(round.id, now),
      data.roundState.tallies([round.id]),
    ]);
    const wallOf = new Map(walls.map((wall) => [wall.specimenId, wall]));
    return {
      course: { id: course.id, title: course.title, timeZone: course.timeZone },
      exercise: { id: exercise.id, title: exercise.title },
      round: { number: round.number, title: round.title },
      senders: tallies.get(round.id)?.sent ?? 0,
      specimens: specimens.flatMap(({ id, versions: [version] }) => {
        if (!version) return [];
        const wall = wallOf.get(id);
        return [
          {
            id,
            text: version.text,
            face: version.pack.face ? `${version.pack.face.family} ${version.pack.face.style}` : null,
            ...settingOf(version),
            wall: wall ? { id: wall.id, openedAt: wall.openedAt, by: wall.openedBy?.user?.name ?? null } : null,
          },
        ];
      }),
    };
  },
});
