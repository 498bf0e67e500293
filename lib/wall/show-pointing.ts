import { operation } from '@/lib/access/operation';
import { addressOf, takeTry } from '@/lib/account/tries';
import type { ScopedData } from '@/lib/data';
import { wallCodeOnly, type PhoneState } from '@/shared/schemas/wall';
import { linesOfWall, onPhones } from './lines-of-wall';
import { packsOfWall } from './packs-of-wall';
import { wallOfCode } from './wall-in-hand';

/** A wall as a phone has it when the short link is opened. Nothing in it names anybody, or says what course it is of. */
export const showPointing = operation({
  name: 'show-pointing',
  allow: 'open',
  input: wallCodeOnly,
  run: async ({ data, caller, now }, { code }) => {
    const address = addressOf(caller);
    await takeTry(data, 'wall-address', address);
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
