import { wallWorld } from '../fill-world';
import { only, type Rows } from '../row';

const wall = ({ ids }: { ids: { wall: string } }) => ({ wallId: ids.wall });

export const wallRows: Rows = {
  'list-walls': { input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 2 }), answers: only.staff },
  'open-wall': {
    input: ({ ids }) => ({ exerciseId: ids.exercise, roundNumber: 1, specimenId: ids.specimen }),
    answers: only.staff,
  },
  'get-wall': { input: wall, answers: only.staff },
  'watch-wall': { input: wall, answers: only.staff },
  'change-wall': {
    input: ({ ids }) => ({ wallId: ids.wall, change: { kind: 'front', line: ids.wallLine } }),
    answers: only.staff,
  },
  'close-wall': { input: wall, answers: only.staff },
  'save-as-note': {
    input: ({ ids }, who) => ({
      wallId: ids.wall,
      line: ids.wallLine,
      pair: 0,
      body: 'Seven of us looked here.',
      requestKey: `kept-by-${who}`,
    }),
    answers: only.staff,
  },
  // The code gives access: everyone in the room has it. The round's id, by which the page hears of new lines, leads
  // nowhere without a role in the course.
  'get-pointing': {
    input: () => ({ code: wallWorld.code }),
    answers: only.anyone,
    tells: ({ ids }) => [ids.nextRound],
  },
  point: {
    input: ({ ids }) => ({ code: wallWorld.code, phone: 'a'.repeat(22), at: { line: ids.wallLine, pair: 0 } }),
    answers: only.anyone,
  },
  'watch-pointing': { input: () => ({ code: wallWorld.code }), answers: only.nobody },
};
