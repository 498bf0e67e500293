'use client';
import { keyList } from './keys';
import style from './desk.module.css';

type Props = { open: boolean; on: boolean; turn: (on: boolean) => void; toggle: (open: boolean) => void };

/** The keys, on request, and the switch that turns them off. */
export function KeyHelp({ open, on, turn, toggle }: Props) {
  return (
    <details className="more" open={open} onToggle={(event) => toggle(event.currentTarget.open)}>
      <summary>Keys</summary>
      <p><label><input type="checkbox" checked={on} onChange={(event) => turn(event.target.checked)} /> Single keys work on this page</label></p>
      <dl className={style.keys}>
        {keyList.map(([key, what]) => (
          <div key={key}><dt><kbd>{key}</kbd></dt><dd>{what}</dd></div>
        ))}
      </dl>
    </details>
  );
}
