'use client';
import style from './desk.module.css';

type Props = {
  list: readonly (readonly [string, string])[];
  open: boolean;
  on: boolean;
  turn: (on: boolean) => void;
  toggle: (open: boolean) => void;
};

/** The keys, on request, and the switch that turns them off. */
export function KeyHelp({ list, open, on, turn, toggle }: Props) {
  return (
    <details className="more" open={open} onToggle={(event) => toggle(event.currentTarget.open)}>
      <summary>Keys</summary>
      <p>
        <label>
          <input type="checkbox" checked={on} onChange={(event) => turn(event.target.checked)} /> Single keys work on
          this page
        </label>
      </p>
      <dl className={style.keys}>
        {list.map(([key, what]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
