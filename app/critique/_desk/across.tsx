'use client';
import { useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import type { AcrossPage } from '@/shared/critique/desk';
import { decide, nextOpen, readRun, reopen, requestKeyOf, type RemarkRun } from '@/shared/critique/remark-run';
import { spacedLetters } from '@/shared/critique/run';
import { fillStockNote } from '@/shared/critique/stock-note';
import type { NoteView } from '@/shared/schemas/note';
import { AcrossRemark, OneRemark } from './across-remark';
import { AcrossSheets, sizes, type SizeName } from './across-sheets';
import { acrossKeys, type Acts, KeyHelp } from './keys';
import { LooksMenu, useKeysAndLooks, useLooks } from './looks';
import { send } from '@/app/_ui/send';
import { suggestedFirst } from './note-form';
import { Unsaved, useStoredText, useNoteSending } from './notes';
import { useGoing } from './queue';
import style from './desk.module.css';

const newId = () => crypto.randomUUID().replaceAll('-', '').slice(0, 16);

/**
 * One line, as the whole class set it, below each other; students who share a fault can get one remark, each after a
 * look.
 */
export function Across({ page }: { page: AcrossPage }) {
  const { personKey, chosen, lines, versions, go } = page;
  const { leaving, go: leaveFor } = useGoing();
  const area = useRef<HTMLTextAreaElement>(null);
  const [deviations, setDeviations] = useState(false);
  const [size, setSize] = useState<SizeName>('true');
  const [help, setHelp] = useState(false);
  const [message, setMessage] = useState('');
  const [looking, setLooking] = useState<string | null>(null);
  const [left, setLeft] = useState<{ token: string; note: NoteView }[]>([]);
  const [keysOff, setKeysOff] = useStoredText(personKey, 'critique-keys-off');
  const [stored, keep] = useStoredText(personKey, `across/${page.round}/${page.specimen.id}/${chosen?.key ?? ''}`);
  const [firstId] = useState(newId);
  const looks = useLooks();
  const run = readRun(stored, firstId);
  const setRun = (next: RemarkRun) => keep(JSON.stringify(next));
  const notes = useNoteSending(personKey, (note, { proofId }) => setLeft((all) => [...all, { token: proofId, note }]));

  const tokens = lines.map(({ token }) => token);
  const line = lines.find(({ token }) => token === looking);
  const version = line && versions.find(({ id }) => id === line.specimenVersionId);
  const stock = suggestedFirst(page.stock, chosen?.fault ?? '');
  const letters = chosen
    ? spacedLetters(versions.find(({ number }) => chosen.key.startsWith(`v${number}-`))!.pack).slice(
        chosen.first,
        chosen.last + 2,
      )
    : [];

  function look(after: RemarkRun) {
    const next = nextOpen(after, tokens);
    setLooking(next);
    if (next === null)
      setMessage(
        go.nextPage
          ? 'All of this page are decided on. The next page has more with the same fault; the remark goes along.'
          : 'All have been decided.',
      );
  }

  function begin() {
    if (run.body.trim() === '') return area.current?.focus();
    setMessage('');
    look(run);
  }

  /** Leaves the remark on the line in view and goes on to the next: only lines that were looked at get one. */
  function confirm(body: string, suggestion: number[] | null) {
    if (!line || !chosen) return;
    const next = decide(run, line.token, 'left');
    const { token: proofId, specimenVersionId, shownAs } = line;
    setRun(next);
    look(next);
    setMessage(`Left on ${shownAs}.`);
    void notes
      .write({
        proofId,
        specimenVersionId,
        requestKey: requestKeyOf(run, proofId),
        fromPair: chosen.first,
        toPair: chosen.last,
        body,
        suggestion,
      })
      .then((answer) => {
        if (!answer.ok)
          setMessage(`On ${shownAs} it is not saved yet: ${answer.message} The note is kept on this device.`);
      });
  }

  function passOver() {
    if (!line) return;
    const next = decide(run, line.token, 'passed');
    setRun(next);
    setMessage(`Passed over ${line.shownAs}.`);
    look(next);
  }

  async function takeBack() {
    const last = left.at(-1);
    if (!last) return setMessage('There is no remark here to withdraw.');
    const answer = await send<NoteView>('PUT', `/api/critique/notes/${last.note.id}/state`, {
      version: last.note.version,
      to: 'removed',
    });
    if (!answer.ok) return setMessage(answer.message);
    setLeft((all) => all.slice(0, -1));
    setRun(reopen(run, last.token, newId()));
    if (lines.some(({ token }) => token === last.token)) setLooking(last.token);
    setMessage('Withdrawn.');
  }

  const goTo = (address: string | null, none: string) => () =>
    address === null ? setMessage(none) : leaveFor(address);
  const acts: Acts = {
    d: () => setDeviations(!deviations),
    '?': () => setHelp(!help),
    z: () => void takeBack(),
    i: goTo(go.nextFault, 'No two spacings of this line share a fault.'),
    p: goTo(go.nextPage, 'This is the last page.'),
    P: goTo(go.previousPage, 'This is the first page.'),
    l: goTo(go.nextLine, 'This is the last line.'),
    L: goTo(go.previousLine, 'This is the first line.'),
    ...(chosen
      ? {
          w: () => area.current?.focus(),
          g: begin,
          m: () => {
            if (lines.every(({ suggestion }) => suggestion !== null)) setRun({ ...run, suggests: !run.suggests });
          },
          ...Object.fromEntries(
            stock
              .slice(0, 9)
              .map((note, index) => [
                String(index + 1),
                () => setRun({ ...run, body: fillStockNote(note.body, letters, chosen.fault) }),
              ]),
          ),
        }
      : {}),
  };
  // While one line is in view, its own keys apply (OneRemark).
  useKeysAndLooks(acts, looks, keysOff !== 'yes' && !leaving && looking === null);

  return (
    <div className={style.across}>
      <p role="status" className={style.message}>
        {message}
      </p>
      <Unsaved
        notes={notes}
        here={`/exercises/${page.exerciseId}/rounds/${page.round}/specimens/${page.specimen.id}`}
      />
      {chosen && line && version ? (
        <OneRemark
          key={line.token}
          line={line}
          version={version}
          at={chosen}
          looks={looks}
          body={run.body}
          suggestion={run.suggests ? line.suggestion : null}
          place={tokens.indexOf(line.token) + 1}
          of={tokens.length}
          keys={keysOff !== 'yes' && !leaving}
          confirm={confirm}
          passOver={passOver}
          takeBack={() => void takeBack()}
          stop={() => setLooking(null)}
        />
      ) : (
        <>
          {chosen && (
            <AcrossRemark
              run={run}
              change={setRun}
              anew={() => {
                keep('');
                setMessage('');
              }}
              stock={stock}
              letters={letters}
              fault={chosen.fault}
              lines={lines}
              begin={begin}
              area={area}
            />
          )}
          <div className="actions">
            <Button small aria-pressed={deviations} onClick={() => setDeviations(!deviations)}>
              {deviations ? 'Hide the deviations' : 'Show the deviations'}
            </Button>
            <label className={style.inline}>
              Size{' '}
              <select value={size} onChange={(event) => setSize(event.target.value as SizeName)}>
                {Object.entries(sizes).map(([name, { label }]) => (
                  <option key={name} value={name}>
                    {label}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <LooksMenu looks={looks} />
          <AcrossSheets
            looks={looks.looks}
            lines={lines}
            versions={versions}
            chosen={chosen}
            deviations={deviations}
            size={size}
            first={page.first}
            decided={run.decided}
          />
        </>
      )}
      {help && (
        <KeyHelp
          list={acrossKeys}
          on={keysOff !== 'yes'}
          turn={(on) => setKeysOff(on ? '' : 'yes')}
          close={() => setHelp(false)}
        />
      )}
      <p>
        <Button small kind="text" aria-expanded={help} onClick={() => setHelp(!help)}>
          Keys
        </Button>
      </p>
    </div>
  );
}
