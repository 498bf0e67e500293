import type { SpacingDocument } from '@/shared/editing/document';
import { settled } from '@/shared/editing/history';
import type { CssPx } from '@/shared/units';
import type { BenchState } from '../session/state';
import { RULER_HEIGHT, workingEm } from './sizes';

/** The room that the sheet has for its lines, CSS px; without a height where the page is read by scrolling. */
export type Room = { readonly width: CssPx; readonly height: CssPx | null };

/**
 * Em of the views on the sheet, CSS px. `above` is the line at its true size or, where that is too wide or the working
 * view needs the height, smaller; null where the working view alone shows all of it. `fits`: the whole line is in the
 * working view.
 */
export type Views = { readonly above: CssPx | null; readonly working: CssPx; readonly fits: boolean };

type Asked = Pick<BenchState, 'room' | 'zoom' | 'atTrue' | 'history' | 'overlay' | 'overlayMode'>;

/** Width and height of the line, in em, and its true size. */
export type LineSize = { readonly widthEm: number; readonly reachEm: number; readonly trueEm: CssPx };

/**
 * What is different for one person: times the working view that everybody else has, and whether the ruler is on this
 * person's bench alone.
 */
type Accommodated = { readonly workingView?: number; readonly rulerOfOwn?: boolean };

/** White at both ends of a line; a label with what is around it; what is over and under the letters of each view. */
const ENDS = 48;
const LABEL = 44;
const AROUND = { above: 20, working: 44, beside: 54 };
/** The working view is larger than the true size by this at least, or the line is shown once. */
const LARGER = 1.2;
const LARGEST: CssPx = 330;
/** Share of the height that the whole line takes at most, and its least em, while the working view is panned. */
const OVERVIEW = 0.3;
const LEAST: CssPx = 24;

/**
 * What the sheet shows: the line at its true size and under it large, or once where there is room for no more. The
 * whole line is always to be seen: what is larger than the sheet is panned, with all of it small above.
 */
export function planViews(line: LineSize, room: Room, state: Asked, person: Accommodated = {}): Views {
  const { reachEm, trueEm } = line;
  const widthEm = widthNow(line.widthEm, settled(state.history));
  const fitted = (room.width - ENDS) / widthEm;
  const { zoom, atTrue } = state;
  if (room.height === null) {
    // About three letters are in view.
    const most = Math.max((room.width * zoom) / 2, 36);
    const working = atTrue ? trueEm : Math.min(most, workingEm(widthEm, trueEm, room.width, zoom));
    const fits = working <= fitted;
    return { above: !fits || working !== trueEm ? Math.min(trueEm, fitted) : null, working, fits };
  }
  const beside = state.overlay !== null && state.overlayMode === 'beside';
  // The part of the height that is left for letters when `views` stand under one another.
  const left = room.height - LABEL - AROUND.working - (beside ? AROUND.beside : 0);
  const others = left + heightOfOwn(zoom, person);
  const views = beside ? 2 : 1;
  const large = Math.min(fitted, LARGEST, (others - AROUND.above - reachEm * trueEm) / reachEm / views);
  // What the working view leaves, so that both are in view where they can be.
  const over = (working: CssPx) => Math.max(LEAST, (left - AROUND.above - views * reachEm * working) / reachEm);
  if (trueEm <= fitted && large >= LARGER * trueEm) {
    const working = atTrue ? trueEm : large * zoom;
    return { above: zoom > 1 ? Math.min(trueEm, over(working)) : trueEm, working, fits: working <= fitted };
  }
  const alone = Math.max(12, Math.min(fitted, others / reachEm / views));
  const base = Math.min(alone, Math.max(trueEm, LARGEST));
  const working = atTrue ? trueEm : (trueEm <= alone ? trueEm : base) * zoom;
  const fits = working <= fitted;
  if (fits) return { above: null, working, fits };
  return { above: Math.min(fitted, (OVERVIEW * left) / reachEm, over(working)), working, fits };
}

/**
 * Height that the sheets of all others have and this one has not. Twice is twice what they see, so a larger working
 * view is fitted to it and then panned; at the usual size the line still fits what is there.
 */
function heightOfOwn(zoom: number, { workingView = 1, rulerOfOwn = false }: Accommodated): CssPx {
  if (!rulerOfOwn || workingView <= 1) return 0;
  return RULER_HEIGHT * Math.max(0, Math.min(1, (zoom - 1) / (workingView - 1)));
}

/** One step by which a line that has grown is shown smaller; one is kept free, so that no small change rescales it. */
const STEP = 1.06;

/** Width to fit, em: as the face gives it, in steps as the line grows, so that a small change leaves its scale alone. */
function widthNow(widthEm: number, { tracking, offsets }: SpacingDocument): number {
  const grown = offsets.reduce((sum, offset) => sum + offset, tracking * offsets.length) / 1000;
  const taken = grown <= 0 ? 0 : Math.ceil(Math.log(1 + grown / widthEm) / Math.log(STEP));
  return widthEm * STEP ** Math.max(1, taken);
}
