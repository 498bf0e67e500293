'use client';
import type { Acts } from '@/app/_ui/use-keys';
import type { WallChange, WallState } from '@/shared/schemas/wall';
import { wallKeys, wallLooks } from './keys';
import { toggled, type Looking } from './looking';
import type { Places } from './use-places';

type Hands = {
  looking: Looking;
  setLooking: (next: Looking) => void;
  state: WallState;
  places: Places;
  change: (what: WallChange) => Promise<void>;
};

/** What each key does; the strip's buttons do the same. */
export function actsOf({ looking, setLooking, state, places, change }: Hands): Acts {
  const { chosen } = looking;
  const set = (more: Partial<Looking>) => setLooking({ ...looking, ...more });
  const step = (by: number) => {
    const { order } = places;
    if (order.length === 0) return;
    const at = chosen === null ? -1 : order.indexOf(chosen);
    const next = at < 0 ? (by > 0 ? 0 : order.length - 1) : (at + by + order.length) % order.length;
    set({ chosen: order[next]! });
    // A line that is out of sight comes into it, and only then does the page move.
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

/** Columns as they stand on the screen, where nobody chose a number. */
function shownColumns({ columns }: Looking): number {
  return columns ?? Number(document.querySelector('[data-columns]')?.getAttribute('data-columns') ?? 1);
}
