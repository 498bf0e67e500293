'use client';
import { useMemo, useRef, useState } from 'react';
import { send } from '@/app/_ui/send';
import { useKeys } from '@/app/_ui/use-keys';
import { useLive } from '@/app/_ui/use-live';
import { usePacks } from '@/app/_ui/use-packs';
import { opposite } from '@/app/_line/inks';
import { classes } from '@/app/_ui/classes';
import type { WallChange, WallPack, WallState } from '@/shared/schemas/wall';
import { medianSpacing, sameAgain } from '@/shared/class/wall';
import { actsOf, atFirst, type Looking, MEDIAN, REFERENCE } from './acts';
import { columnsFor, emFor, usePlaces, useSize, widest } from './stage';
import { SaveNote, Link, type LinkTo } from './room';
import { Cell, type Over, type Shown } from './wall-line';
import { Strip } from './strip';
import { TwoInTurn } from './two-in-turn';
import style from './projector.module.css';

export type WallOf = {
  id: string;
  title: string;
  text: string;
  back: string;
  packs: WallPack[];
  state: WallState;
  link: LinkTo;
};

/** The wall: every line at one size, what the room points at, and the strip of controls. */
export function Projector({ wall, close }: { wall: WallOf; close: React.ReactNode }) {
  const { state, following } = useLive(`/api/walls/${wall.id}`, wall.state, joined);
  const packs = usePacks(`/api/walls/${wall.id}`, wall.packs, [
    ...(state.newest > 0 ? [state.newest] : []),
    ...state.lines.map(({ version }) => version),
  ]);
  const [looking, setLooking] = useState<Looking>(atFirst);
  const [keysOn, setKeysOn] = useState(true);
  const [message, setMessage] = useState('');
  const [noteAt, setNoteAt] = useState<{ line: string; pair: number } | null>(null);
  const places = usePlaces(state.lines, looking.holding);
  const stage = useRef<HTMLDivElement>(null);
  const size = useSize(stage);

  const change = async (what: WallChange) => {
    const answer = await send('PUT', `/api/walls/${wall.id}`, what);
    setMessage(answer.ok ? '' : answer.message);
  };
  const lineOf = new Map(state.lines.map((line) => [line.key, line]));
  const drawn = places.order.flatMap((key): Shown[] => {
    const line = lineOf.get(key);
    const pack = line && packs.get(line.version);
    return line && pack ? [{ line, ...pack }] : [];
  });
  const newest = packs.get(state.newest);
  const over = useOver(state, looking);
  const special = specials(state, newest);
  const acts = actsOf({ looking, setLooking, state, places, change });
  useKeys(acts, keysOn && following !== 'over');

  const ems = widest(drawn.map(({ pack, line }) => ({ pack, spacing: line.spacing })));
  const columns = size ? (looking.columns ?? columnsFor(size.width, size.height, ems)) : 1;
  const front = drawn.find(({ line }) => line.key === state.front);
  const two = [looking.one, looking.two]
    .map((key) => drawn.find(({ line }) => line.key === key) ?? special.find(({ line }) => line.key === key))
    .filter((one) => one !== undefined);
  const turning = looking.turning && two.length === 2;
  const single = turning || front !== undefined;
  const em = size ? emFor(single ? 1 : columns, size.width, ems, size.height) : 0;
  const ground = newest?.ground ?? 'light';
  const stageGround = looking.looks.opposite ? opposite(ground) : ground;
  const cell = (shown: Shown) => (
    <Cell
      key={shown.line.key}
      shown={shown}
      looking={looking}
      em={em}
      width={size ? Math.floor(size.width / (single ? 1 : columns)) : 0}
      over={shown.line.version === state.newest ? over : nothingOver}
      counts={state.pointing === 'show' ? state.counts.filter(({ line }) => line === shown.line.key) : null}
      fresh={places.fresh.includes(shown.line.key)}
      renewed={places.renewed.includes(shown.line.key)}
      choose={() => setLooking({ ...looking, chosen: shown.line.key })}
      keep={(pair) => setNoteAt({ line: shown.line.key, pair })}
    />
  );
  return (
    <main id="main" tabIndex={-1} data-frame="none" data-wall className={style.wall}>
      <h1 className="visually-hidden">The wall: {wall.title}</h1>
      <div ref={stage} className={classes('sheet', `sheet-${stageGround}`, style.stage)}>
        {drawn.length === 0 && (
          <p className={style.empty}>This line hasn’t been sent yet. It appears here as soon as a student sends it.</p>
        )}
        {turning && size ? (
          <TwoInTurn two={two} looking={looking} em={em} width={size.width} setLooking={setLooking} />
        ) : (
          <ul className={style.lines} data-columns={front ? 1 : columns}>
            {size && (front ? [front] : drawn).map(cell)}
          </ul>
        )}
      </div>
      {looking.link && <Link link={wall.link} />}
      {noteAt && newest && (
        <SaveNote
          key={`${noteAt.line} ${noteAt.pair}`}
          wallId={wall.id}
          at={noteAt}
          shown={drawn.find(({ line }) => line.key === noteAt.line)}
          count={state.counts.find(({ line, pair }) => line === noteAt.line && pair === noteAt.pair)?.count ?? 0}
          done={(words) => {
            setNoteAt(null);
            setMessage(words);
          }}
        />
      )}
      <Strip
        wall={wall}
        state={state}
        following={following}
        message={message}
        looking={looking}
        setLooking={setLooking}
        places={places}
        drawn={drawn}
        keysOn={keysOn}
        setKeysOn={setKeysOn}
        acts={acts}
        change={change}
        keep={setNoteAt}
        close={close}
        columns={columns}
      />
    </main>
  );
}

const joined = (before: WallState, now: WallState): WallState => ({
  ...now,
  lines: sameAgain(before.lines, now.lines),
});
const nothingOver: Over[] = [];

/** The overlays of every line: the median dashed, a reference in full. The same content gives the same object. */
function useOver(state: WallState, { median, reference }: Looking): readonly Over[] {
  const middle = median ? medianOf(state) : null;
  const overlay = reference === null ? undefined : state.references[reference];
  const written = JSON.stringify([
    ...(middle ? [{ spacing: middle, dashed: true }] : []),
    ...(overlay ? [{ spacing: overlay, dashed: false }] : []),
  ]);
  return useMemo(() => (written === '[]' ? nothingOver : (JSON.parse(written) as Over[])), [written]);
}

/** Spacings on the wall that were made on the newest version. */
function medianOf(state: WallState) {
  const lines = state.lines.filter(({ out, version }) => !out && version === state.newest);
  return lines.length > 0 ? medianSpacing(lines.map(({ spacing }) => spacing)) : null;
}

/** The median and the references as lines of their own, for showing two in turn. */
function specials(state: WallState, newest: WallPack | undefined): Shown[] {
  if (!newest) return [];
  const middle = medianOf(state);
  const as = (key: string, spacing: WallState['references'][number]): Shown => ({
    ...newest,
    line: { key, sign: key, version: newest.version, spacing, sent: 0, out: false },
  });
  return [
    ...(middle ? [as(MEDIAN, middle)] : []),
    ...state.references.map((spacing, index) => as(index === 0 ? REFERENCE : `${REFERENCE} ${index + 1}`, spacing)),
  ];
}
