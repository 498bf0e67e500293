import { useImperativeHandle, useRef, type Ref } from 'react';
import { lineArt } from './drawing/art';
import { xOf } from './drawing/frame';
import type { Drawn } from './drawing/line-canvas';
import { CLEAR, excessOf, opennessOf, SLIGHT } from './openness';
import { shownDocument } from './session/shown';
import { mayTell } from './session/may-tell';
import { useSession } from './context';
import styles from './bench.module.css';

export type RulerHandle = { place(drawn: Drawn): void };

const HEIGHT = 92;
/** Height of the middle of the line over the foot of the ruler. */
const CENTRE = 46;
const FOOT = 70;

/**
 * One gauge per gap, its height how open the gap looks; a rule through all at the middle of its kind.
 * Wedges under a gauge point in where it is too tight and out where it is too loose.
 */
export function GapRuler({ ref }: { ref: Ref<RulerHandle> }) {
  const session = useSession();
  const svg = useRef<SVGSVGElement>(null);
  useImperativeHandle(ref, () => ({
    place({ frame, placed }) {
      const drawing = svg.current;
      if (!drawing) return;
      const state = session.store.get();
      const document = shownDocument(state, session.props);
      const { line } = lineArt(session.props.pack);
      const openness = opennessOf(line, document);
      const paths = { gauges: '', chosen: '', centre: '', wedges: '', bands: '' };
      for (const gap of placed.gaps) {
        const centre = openness.centres[gap.index];
        if (centre === null || centre === undefined) continue;
        const x = xOf(frame, gap.centre);
        const height = Math.min(1.45, (openness.gaps[gap.index] ?? 0) / centre) * CENTRE;
        const gauge = `M${x.toFixed(1)} ${FOOT}v${(-height).toFixed(1)}m-5 0h10`;
        if (gap.index === state.chosen.head) paths.chosen += gauge;
        else paths.gauges += gauge;
        const excess = excessOf(line, document, openness, gap.index) ?? 0;
        if (Math.abs(excess) >= SLIGHT) paths.wedges += wedges(x, Math.abs(excess) < CLEAR ? 4 : 6.5, excess > 0);
      }
      const first = placed.gaps[0];
      const last = placed.gaps[placed.gaps.length - 1];
      if (first && last) paths.centre = `M${Math.min(xOf(frame, first.centre), xOf(frame, last.centre)) - 14} ${FOOT - CENTRE}H${Math.max(xOf(frame, first.centre), xOf(frame, last.centre)) + 14}`;
      if (mayTell(session.props.tells, 'everything')) paths.bands = toleranceBands(session, state.laid, { frame, placed }, document);
      for (const [name, d] of Object.entries(paths)) drawing.querySelector(`[data-part=${name}]`)?.setAttribute('d', d);
      drawing.setAttribute('width', String(frame.width));
    },
  }), [session]);
  return (
    <svg ref={svg} className={styles.ruler} height={HEIGHT} aria-hidden="true">
      <path data-part="bands" className={styles.rulerBands} />
      <path data-part="centre" className={styles.rulerCentre} />
      <path data-part="gauges" className={styles.rulerGauges} />
      <path data-part="chosen" className={styles.rulerChosen} />
      <path data-part="wedges" className={styles.rulerWedges} />
    </svg>
  );
}

/** Two wedges at x: points together when tight, turned away when loose. */
function wedges(x: number, size: number, loose: boolean): string {
  const y = FOOT + 11;
  return [-1, 1]
    .map((side) => {
      const tip = x + side * (loose ? size + 2 : 1.5);
      const back = x + side * (loose ? 1.5 : size + 2);
      return `M${tip.toFixed(1)} ${y}L${back.toFixed(1)} ${(y - size * 0.75).toFixed(1)}v${(size * 1.5).toFixed(1)}z`;
    })
    .join('');
}

/** For the reference that is laid to the line: how far each gauge may stand and still be called the same. */
function toleranceBands(session: ReturnType<typeof useSession>, laid: string | null, { frame, placed }: Pick<Drawn, 'frame' | 'placed'>, document: ReturnType<typeof shownDocument>): string {
  const underlay = session.props.underlays?.find(({ id }) => id === laid);
  if (!underlay?.tolerances) return '';
  const { line } = lineArt(session.props.pack);
  const openness = opennessOf(line, document);
  // The underlay at this line's own tightness, so that only evenness is compared.
  const wanted = opennessOf(line, { tracking: underlay.spacing.tracking, offsets: underlay.spacing.offsets });
  return placed.gaps
    .map((gap) => {
      const centre = openness.centres[gap.index];
      const theirCentre = wanted.centres[gap.index];
      const tolerance = underlay.tolerances?.[gap.index];
      if (!centre || !theirCentre || tolerance === null || tolerance === undefined) return '';
      const middle = ((wanted.gaps[gap.index] ?? 0) / theirCentre) * CENTRE;
      const half = (tolerance / theirCentre) * CENTRE;
      const x = xOf(frame, gap.centre);
      return `M${(x - 7).toFixed(1)} ${(FOOT - middle - half).toFixed(1)}h14v${(2 * half).toFixed(1)}h-14z`;
    })
    .join('');
}
