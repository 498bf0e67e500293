'use client';
import { useEffect, useId, useRef } from 'react';
import { LineDrawing } from '@/app/_line/LineDrawing';
import { classes } from '@/app/_ui/classes';
import { gapName, pairLetters } from '@/shared/editing/pair-words';
import { placeLetters } from '@/shared/outline/place-letters';
import type { PhoneLine, WallPack } from '@/shared/schemas/wall';
import style from './pointer.module.css';

type Props = {
  pack: WallPack;
  line: PhoneLine;
  chosen: number | null;
  off: boolean;
  choose: (pair: number | null) => void;
};

/** The whole line, and a large view to push along with the finger; under it every gap as a radio button. */
export function Aim({ pack: { pack, ground }, line, chosen, off, choose }: Props) {
  const name = useId();
  const gaps = placeLetters(pack, line.spacing).gaps;
  const push = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const holder = push.current;
    const reach = chosen === null ? null : holder?.querySelectorAll('rect')[chosen];
    if (!holder || !reach) return;
    const { left, width } = reach.getBoundingClientRect();
    holder.scrollLeft += left + width / 2 - holder.getBoundingClientRect().left - holder.clientWidth / 2;
  }, [chosen]);
  const pick = (pair: number) => {
    if (!off) choose(pair === chosen ? null : pair);
  };
  return (
    <>
      <div className={classes('sheet', `sheet-${ground}`, style.sheet)}>
        <LineDrawing
          pack={pack}
          spacing={line.spacing}
          label={`${pack.text}, line ${line.sign}`}
          behind={chosen === null ? undefined : <Mark pack={pack} line={line} pair={chosen} />}
        />
        <div
          ref={push}
          className={style.push}
          tabIndex={0}
          role="group"
          aria-label="The line large; it can be pushed sideways"
        >
          <div className={style.large}>
            <LineDrawing
              pack={pack}
              spacing={line.spacing}
              label={null}
              behind={<Reach pack={pack} line={line} chosen={chosen} pick={pick} />}
            />
          </div>
        </div>
      </div>
      <fieldset className={style.gaps} disabled={off}>
        <legend>Gaps of this line</legend>
        {gaps.map(({ index }) => {
          const { left, right, wordSpace } = pairLetters(pack, index);
          return (
            <label key={index} className={style.gap}>
              <input
                type="radio"
                name={name}
                checked={chosen === index}
                onChange={() => pick(index)}
                onClick={() => {
                  if (chosen === index) pick(index);
                }}
                aria-label={gapName(pack, index)}
              />
              <span aria-hidden="true">
                {left}
                {wordSpace ? ' ' : ''}
                <i />
                {right}
              </span>
            </label>
          );
        })}
      </fieldset>
    </>
  );
}

type OnLine = { pack: WallPack['pack']; line: PhoneLine };

/** A wedge above the chosen gap. */
function Mark({ pack, line, pair }: OnLine & { pair: number }) {
  const x = placeLetters(pack, line.spacing).gaps[pair]?.centre ?? 0;
  const em = pack.unitsPerEm;
  const top = -Math.max(pack.vertical.ascender, pack.vertical.ascenderTop, pack.vertical.capHeight);
  return <path className={style.mark} d={`M${x - 0.07 * em} ${top}H${x + 0.07 * em}L${x} ${top + 0.14 * em}Z`} />;
}

/** The touch area of a gap: from the middle of one letter to the middle of the next, over the whole height. */
function Reach({ pack, line, chosen, pick }: OnLine & { chosen: number | null; pick: (pair: number) => void }) {
  const { letters, gaps } = placeLetters(pack, line.spacing);
  const top = Math.max(pack.vertical.ascender, pack.vertical.ascenderTop, pack.vertical.capHeight);
  const middle = (index: number) => letters[index]!.x + letters[index]!.advance / 2;
  return (
    <>
      {chosen !== null && <Mark pack={pack} line={line} pair={chosen} />}
      {gaps.map(({ index }) => (
        <rect
          key={index}
          className={style.reach}
          x={middle(index)}
          y={-top}
          width={Math.max(1, middle(index + 1) - middle(index))}
          height={top - pack.vertical.descender}
          onClick={() => pick(index)}
        />
      ))}
    </>
  );
}
