import qrcode from 'qrcode-generator';
import { AppError } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { addressOf, countTry } from '@/lib/account/tries';
import type { ScopedData } from '@/lib/data';
import { systemCaller } from '@/lib/access/caller';
import { retryOnConflict } from '@/lib/data/retry';
import { announce, bus } from '@/lib/live/announce';
import { spacingOf } from '@/lib/rows/spacing';
import { type PhoneState, pointSchema, wallCodeOnly } from '@/shared/schemas/wall';
import { linesOfWall, onPhones, packsOfWall } from './screen';
import { wallOfCode } from './walls';

/** A limit against invented phones; approximate: they are counted before one more is added. */
const mostPhones = 500;

/** Where one phone points: one place at a time, moved by pointing again, taken back by pointing at nothing. */
export const point = operation({
  name: 'point',
  allow: 'open',
  input: pointSchema,
  run: async ({ data, caller, now }, { code, phone, at }): Promise<{ pointed: boolean }> => {
    await countTry(data, 'point-address', addressOf(caller));
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
      const isNew = !(await data.walls.hasPhone(wall, phone));
      // By wall and address: one stranger can't take all the places of a room, nor of other walls.
      if (isNew) await countTry(data, 'phone-address', `${wall.id} ${addressOf(caller)}`);
      if (isNew && (await data.walls.phones(wall)) >= mostPhones)
        throw new AppError('CONFLICT', `${mostPhones} phones point at this wall already, and it takes no more.`);
      await retryOnConflict(() => data.walls.point(wall, { phone, proofItemId: aimed.item.id, pair: at.pair }, now));
    }
    announce(`points:${wall.id}`);
    return { pointed: at !== null };
  },
});

/** A wall as a phone gets it by the short link. It contains no names, and not which course it belongs to. */
export const getPointing = operation({
  name: 'get-pointing',
  allow: 'open',
  input: wallCodeOnly,
  run: async ({ data, caller, now }, { code }) => {
    const address = addressOf(caller);
    await countTry(data, 'wall-address', address);
    const { wall } = await wallOfCode(data, code, now);
    // A code that leads somewhere was no guess.
    await data.rateLimits.giveBack('wall-address', address);
    const state = await phoneState(data, code, now);
    return {
      wallId: wall.id,
      roundId: wall.round.id,
      code,
      packs: await packsOfWall(data, wall, new Set(state.lines.map(({ version }) => version))),
      state,
    };
  },
});

/** The present state alone, read once at each change for all phones together. */
export const watchPointing = operation({
  name: 'watch-pointing',
  allow: 'system',
  input: wallCodeOnly,
  run: ({ data, now }, { code }) => phoneState(data, code, now),
});

async function phoneState(data: ScopedData, code: string, now: Date): Promise<PhoneState> {
  const { wall, settings } = await wallOfCode(data, code, now);
  const lines = onPhones(await linesOfWall(data, wall, settings), settings);
  return {
    pointing: settings.pointing !== 'off',
    asking: settings.asking,
    lines: lines.map(({ line: { key, sign, version, spacing } }) => ({ key, sign, version, spacing })),
  };
}

type Shared = { stale: boolean; readAt: number; reading: Promise<PhoneState>; stop: () => void };
type Shown = { code: string; wallId: string; roundId: string };

const shared = new Map<string, Shared>();
/** In ms. Anything the bus missed is found after this; a wall without requests is dropped from memory. */
const lasts = 10_000;

/**
 * The present state of a wall for its phones, read from the database once for all of them: sixty phones notified of one
 * change make one query.
 */
export function getPhoneState({ code, wallId, roundId }: Shown): Promise<PhoneState> {
  const there = shared.get(code);
  if (there && !there.stale && Date.now() - there.readAt < lasts) return there.reading;
  there?.stop();
  const entry: Shared = {
    stale: false,
    readAt: Date.now(),
    stop: () => {},
    reading: watchPointing(systemCaller('telling the phones at a wall'), { code }),
  };
  entry.stop = bus().listen([`wall:${wallId}`, `round:${roundId}`], () => {
    entry.stale = true;
  });
  // A failure is for those who asked now, and not for the next.
  entry.reading.catch(() => {
    entry.stale = true;
  });
  shared.set(code, entry);
  forgetOld();
  return entry.reading;
}

function forgetOld(): void {
  for (const [code, { readAt, stop }] of shared) {
    if (Date.now() - readAt < 3 * lasts) continue;
    stop();
    shared.delete(code);
  }
}

/**
 * A QR code (ISO/IEC 18004) of an address: how many modules a side, its white margin of four included, and the dark
 * ones as one path.
 */
export function qrPath(address: string): { modules: number; path: string } {
  // Level M: a code on a projector is scanned at an angle and past heads.
  const code = qrcode(0, 'M');
  code.addData(address, 'Byte');
  code.make();
  const count = code.getModuleCount();
  const dark: string[] = [];
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < count; column += 1) {
      if (code.isDark(row, column)) dark.push(`M${column + quiet} ${row + quiet}h1v1h-1z`);
    }
  }
  return { modules: count + 2 * quiet, path: dark.join('') };
}

const quiet = 4;
