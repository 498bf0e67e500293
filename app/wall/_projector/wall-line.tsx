'use client';

import { useEffect, useRef } from 'react';
import { drawSoon, filterFor, forgetDrawing, freshContext } from '@/app/_line/brush';
import { type Frame, reachOf, xOf } from '@/app/_line/frame';
import { inksOf, opposite } from '@/app/_line/inks';
import { paintShapes } from '@/app/_line/painters';
import { classes } from '@/app/_ui/classes';
import { gapName } from '@/shared/editing/pair-words';
import { flipsOf, type Looks } from '@/shared/line/looks';
import { lineShapes } from '@/shared/line/shapes';
import { placeLetters } from '@/shared/outline/place-letters';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Spacing } from '@/shared/schemas/spacing';
import type { GapCount, WallLine as LineOnWall, WallPack } from '@/shared/schemas/wall';
import { BESIDE } from './stage';
import type { Looking } from './acts';
import style from './projector.module.css';

export type Over = { spacing: Spacing; dashed: boolean };

type Props = {
  pack: Pack;
  spacing: Spacing;
  ground: Ground;
  looks: Looks;
  window: number;
  /** CSS px. */
  em: number;
  width: number;
  /** Spacings shown as outlines on top. */
  over: readonly Over[];
  /** An attribute set on the canvas once this spacing is painted, so that tests can tell when the wall shows it. */
  sent?: number;
};

/** Room above and below the letters, CSS px. */
const ROOM = 6;

/** One line of the wall, painted as at the bench. */
export function WallLine({ pack, spacing, ground, looks, window, em, width, over, sent }: Props) {
  const canvasRef = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = canvasRef.current;
    if (!canvas) return;
    const draw = () => {
      const frame = frameOf({ pack, spacing, em, width, looks });
      const dpr = globalThis.devicePixelRatio || 1;
      const context = freshContext(canvas, frame, dpr);
      if (!context) return;
      const overlays = over.map((overlay) => ({
        ...overlay,
        over: true,
        ink: overlay.dashed ? ('mark' as const) : ('note' as const),
      }));
      const shapes = lineShapes({ pack, spacing, looks, chosen: window, overlays });
      paintShapes({ context, dpr, frame, inks: inksOf(ground), em }, shapes);
      canvas.style.width = `${frame.width}px`;
      canvas.style.height = `${frame.height}px`;
      canvas.style.filter = filterFor(looks, em);
      if (sent !== undefined) canvas.dataset.drawn = String(sent);
    };
    drawSoon(draw);
    return () => forgetDrawing(draw);
  }, [pack, spacing, ground, looks, window, em, width, over, sent]);
  return <canvas ref={canvasRef} className={style.canvas} aria-hidden="true" />;
}

type Fit = Pick<Props, 'pack' | 'spacing' | 'em' | 'width' | 'looks'>;

/** Height of a line in CSS px, whatever its spacing. */
const heightOf = (pack: Pack, em: number): number =>
  Math.ceil((reachOf(pack).over + reachOf(pack).under) * em + 2 * ROOM);

/** The position of a line in its frame; turned about its own middle, so that it doesn't move. */
function frameOf({ pack, spacing, em, width, looks }: Fit): Frame {
  const scale = em / pack.unitsPerEm;
  const length = placeLetters(pack, spacing).width * scale;
  const originX = Math.round(0.08 * em);
  return {
    width,
    height: heightOf(pack, em),
    scale,
    originX,
    baselineY: Math.round(ROOM + reachOf(pack).over * em),
    ...flipsOf(looks),
    axisX: originX + length / 2,
  };
}

export type Shown = WallPack & { line: LineOnWall };

type CellProps = {
  shown: Shown;
  looking: Looking;
  em: number;
  width: number;
  over: readonly Over[];
  /** Null while the room's points are not shown. */
  counts: readonly GapCount[] | null;
  fresh: boolean;
  renewed: boolean;
  choose: () => void;
  keep: (pair: number) => void;
};

/** One line of the wall with its sign. */
export function Cell({ shown, looking, em, width, over, counts, fresh, renewed, choose, keep }: CellProps) {
  const { line, pack } = shown;
  const ground = looking.looks.opposite ? opposite(shown.ground) : shown.ground;
  const drawing = { pack, spacing: line.spacing, em, width: Math.max(1, width - BESIDE), looks: looking.looks };
  const chosen = looking.chosen === line.key;
  return (
    <li
      className={classes('sheet', 'sheet-bare', `sheet-${ground}`, style.cell, chosen && style.chosen)}
      data-line={line.key}
    >
      <button
        type="button"
        className={style.sign}
        aria-pressed={chosen}
        onClick={choose}
        aria-label={`Line ${line.sign}${fresh ? ', new' : renewed ? ', set anew' : ''}`}
      >
        {line.sign}
        {(fresh || renewed) && <small>{fresh ? 'new' : 'anew'}</small>}
      </button>
      <div>
        <WallLine {...drawing} ground={ground} window={looking.window} over={over} sent={line.sent} />
        {counts && <RoomMarks {...drawing} counts={counts} keep={keep} />}
      </div>
    </li>
  );
}

type MarksProps = {
  pack: Pack;
  spacing: Spacing;
  em: number;
  width: number;
  looks: Looks;
  counts: readonly GapCount[];
  keep: (pair: number) => void;
};

/** Height of the band under a line for the room's points. */
const bandOf = (em: number): number => Math.round(Math.max(34, 0.42 * em));

/** The room's points: under each gap a disc whose area grows with the number in it. */
function RoomMarks({ pack, spacing, em, width, looks, counts, keep }: MarksProps) {
  const height = bandOf(em);
  const frame = frameOf({ pack, spacing, em, width, looks });
  const { gaps } = placeLetters(pack, spacing);
  const most = Math.max(1, ...counts.map(({ count }) => count));
  return (
    <svg
      className={style.marks}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={counts.map(({ pair, count }) => `${gapName(pack, pair)}: ${count}`).join('; ') || 'No points here'}
    >
      {counts.map(({ pair, count }) => {
        const radius = Math.max(11, (height / 2 - 1) * Math.sqrt(count / Math.max(most, 4)));
        const x = xOf(frame, gaps[pair]?.centre ?? 0);
        return (
          <g key={pair} className={style.mark} onClick={() => keep(pair)}>
            <circle cx={x} cy={height / 2} r={radius} />
            <text
              x={x}
              y={height / 2}
              fontSize={Math.max(14, Math.min(radius, 0.2 * em))}
              textAnchor="middle"
              dominantBaseline="central"
            >
              {count}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
