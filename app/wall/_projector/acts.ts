'use client';

import { looksOn, lookTable } from '@/app/_line/looks';
import type { Acts } from '@/app/_ui/use-keys';
import { type LookName, type Looks, noLooks } from '@/shared/line/looks';
import type { WallChange, WallState } from '@/shared/schemas/wall';
import type { Places } from './stage';

type Controls = {
  looking: Looking;
  setLooking: (next: Looking) => void;
  state: WallState;
  places: Places;
  change: (what: WallChange) => Promise<void>;
};

/** What each key does; the strip's buttons do the same. */
export function actsOf({ looking, setLooking, state, places, change }: Controls): Acts {
  const { chosen } = looking;
  const set = (more: Partial<Looking>) => setLooking({ ...looking, ...more });
  const step = (by: number) => {
    const { order } = places;
    if (order.length === 0) return;
    const at = chosen === null ? -1 : order.indexOf(chosen);
    const next = at < 0 ? (by > 0 ? 0 : order.length - 1) : (at + by + order.length) % order.length;
    set({ chosen: order[next]! });
    // Scrolls only if the line is out of view.
    document.querySelector(`[data-line="${order[next]!}"]`)?.scrollIntoView({ block: 'nearest' });
  };
  const letters = state.lines[0]?.spacing.offsets.length ?? 0;
  const looks = Object.fromEntries(wallLooks.map(({ look, key }) => [key, () => setLooking(toggled(looking, look))]));
  return {
    ...looks,
    [wallKeys.next]: () => step(1),
    [wallKeys.before]: () => step(-1),
    [wallKeys.front]: () => void change({ kind: 'front', line: state.front !== null ? null : chosen }),
    [wallKeys.leaveOut]: () => {
      if (chosen !== null) {
        void change({ kind: 'leave out', line: chosen, out: true });
        set({ chosen: null });
      }
    },
    [wallKeys.one]: () => set({ one: chosen }),
    [wallKeys.two]: () => set({ two: chosen }),
    [wallKeys.turn]: () => set({ turning: !looking.turning, paused: false }),
    [wallKeys.pause]: () => set({ paused: !looking.paused }),
    [wallKeys.median]: () => set({ median: !looking.median }),
    [wallKeys.reference]: () => set({ reference: nextReference(looking.reference, state.references.length) }),
    [wallKeys.on]: () => set({ window: Math.max(0, Math.min(letters - 2, looking.window + 1)) }),
    [wallKeys.back]: () => set({ window: Math.max(0, looking.window - 1) }),
    [wallKeys.larger]: () => set({ columns: Math.max(1, shownColumns(looking) - 1) }),
    [wallKeys.smaller]: () => set({ columns: Math.min(4, shownColumns(looking) + 1) }),
    [wallKeys.fresh]: () => places.take(),
    [wallKeys.room]: () => void change({ kind: 'pointing', to: state.pointing === 'show' ? 'collect' : 'show' }),
    [wallKeys.link]: () => set({ link: !looking.link }),
    [wallKeys.strip]: () => set({ strip: !looking.strip }),
  };
}

const nextReference = (now: number | null, count: number): number | null =>
  now === null ? (count > 0 ? 0 : null) : now + 1 < count ? now + 1 : null;

/** Columns on the screen now, where no number was chosen. */
function shownColumns({ columns }: Looking): number {
  return columns ?? Number(document.querySelector('[data-columns]')?.getAttribute('data-columns') ?? 1);
}

/** Ways of looking offered on a wall, each with its key from the bench. */
export const wallLooks = looksOn('wall').map((look) => ({ look, key: lookTable[look].key }));

/** The wall's other keys, one act each; what is also on bench or desk has the same key there. */
export const wallKeys = {
  next: 'n',
  before: 'N',
  front: 'u',
  leaveOut: 'x',
  one: '1',
  two: '2',
  turn: 'a',
  pause: 'p',
  median: 'i',
  reference: 'r',
  on: 'j',
  back: 'f',
  larger: 'k',
  smaller: 'd',
  fresh: 'e',
  room: 'v',
  link: 'q',
  strip: 'b',
} as const;

/** What is in view and how; it concerns this screen only and is not stored. */
export type Looking = {
  readonly looks: Looks;
  /** First of the three letters that are not covered. */
  readonly window: number;
  readonly median: boolean;
  /** Which reference is the overlay, or null. */
  readonly reference: number | null;
  /** Lines side by side; null chooses as many as can be read from the back. */
  readonly columns: number | null;
  readonly chosen: string | null;
  readonly one: string | null;
  readonly two: string | null;
  readonly turning: boolean;
  readonly paused: boolean;
  /** Seconds each of the two is shown. */
  readonly seconds: number;
  /** New lines wait until they are placed. */
  readonly holding: boolean;
  readonly link: boolean;
  readonly strip: boolean;
};

export const atFirst: Looking = {
  looks: noLooks,
  window: 0,
  median: false,
  reference: null,
  columns: null,
  chosen: null,
  one: null,
  two: null,
  turning: false,
  paused: false,
  seconds: 2,
  holding: false,
  link: false,
  strip: false,
};

const toggled = (looking: Looking, look: LookName): Looking => ({
  ...looking,
  looks: { ...looking.looks, [look]: !looking.looks[look] },
});

/** In whole seconds, at least half a second: nothing on the wall changes more often than twice a second. */
export const turnSeconds = [0.5, 1, 2, 4] as const;

export const MEDIAN = 'the median';
export const REFERENCE = 'the reference';
