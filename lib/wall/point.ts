import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { addressOf, takeTry } from '@/lib/account/tries';
import { retryOnConflict } from '@/lib/data/retry';
import { spacingOf } from '@/lib/rows/spacing';
import { announce } from '@/lib/live/announce';
import { pointSchema } from '@/shared/schemas/wall';
import { linesOfWall, onPhones } from './lines-of-wall';
import { wallOfCode } from './wall-in-hand';

/** Against somebody who makes up phones; about, and not to the last one: they are counted before one more is added. */
const mostPhones = 500;

/** Where one phone points: one place at a time, moved by pointing again, taken back by pointing at nothing. */
export const point = operation({
  name: 'point',
  allow: 'open',
  input: pointSchema,
  run: async ({ data, caller, now }, { code, phone, at }): Promise<{ pointed: boolean }> => {
    await takeTry(data, 'point-address', addressOf(caller));
    const { wall, settings } = await wallOfCode(data, code, now);
    if (at === null) {
      await data.walls.takeBack(wall, phone);
    } else {
      if (settings.pointing === 'off')
        throw new AppError(
          'CONFLICT',
          'Pointing is closed at the moment. Your tap was not counted; wait until it opens.',
        );
      const aimed = onPhones(await linesOfWall(data, wall, settings), settings).find(
        ({ line }) => line.key === at.line,
      );
      if (!aimed) throw new AppError('CONFLICT', 'That line is not on the wall any more. Choose another one.');
      const gaps = spacingOf(aimed.item).offsets.length;
      if (at.pair >= gaps)
        throw new AppError(
          'INVALID',
          `This line has ${gaps} gaps; gap ${at.pair + 1} is not among them. Tap a gap on the line.`,
        );
      if ((await data.walls.phones(wall)) >= mostPhones)
        throw new AppError('CONFLICT', `${mostPhones} phones point at this wall already, and it takes no more.`);
      await retryOnConflict(() => data.walls.point(wall, { phone, proofItemId: aimed.item.id, pair: at.pair }, now));
    }
    announce(`points:${wall.id}`);
    return { pointed: at !== null };
  },
});
