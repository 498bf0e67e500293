'use client';
import { opposite } from '@/app/_line/inks';
import { Button } from '@/app/_ui/Button';
import { classes } from '@/app/_ui/classes';
import type { Shown } from './cell';
import type { Looking } from './looking';
import { useTurn } from './use-turn';
import { WallLine } from './wall-line';
import style from './projector.module.css';

type Props = {
  two: readonly Shown[];
  looking: Looking;
  em: number;
  width: number;
  setLooking: (next: Looking) => void;
};

const nothingOver: never[] = [];

/** Two lines in one place, one after the other and slowly; one under the other where motion is not wanted. */
export function TwoInTurn({ two, looking, em, width, setLooking }: Props) {
  const { second, swap, still } = useTurn(!looking.paused, looking.seconds);
  const now = two[second ? 1 : 0]!;
  return (
    <div className={style.turn}>
      {(still ? two : [now]).map((shown) => {
        const ground = looking.looks.opposite ? opposite(shown.ground) : shown.ground;
        return (
          <div key={still ? shown.line.key : 'both'} className={classes('sheet', 'sheet-bare', `sheet-${ground}`)}>
            <p className={style.turnSign}>{shown.line.sign}</p>
            <WallLine
              pack={shown.pack}
              spacing={shown.line.spacing}
              ground={ground}
              looks={looking.looks}
              window={looking.window}
              em={em}
              width={width}
              over={nothingOver}
            />
          </div>
        );
      })}
      <p className={style.turnWords}>
        <span>
          {two.map(({ line }) => line.sign).join(' and ')},{' '}
          {still
            ? 'one under the other, since your system asks for less motion'
            : looking.paused
              ? 'paused'
              : `each for ${looking.seconds} s`}
        </span>
        {!still && (
          <Button small onClick={() => setLooking({ ...looking, paused: !looking.paused })}>
            {looking.paused ? 'Go on' : 'Pause'}
          </Button>
        )}
        {!still && (
          <Button small onClick={swap}>
            The other one
          </Button>
        )}
      </p>
    </div>
  );
}
