'use client';
import { useRef, useState } from 'react';
import { Button } from '@/app/_ui/Button';
import type { DeskLine } from '@/shared/critique/desk';
import { faultsOf } from '@/shared/critique/faults';
import { lettersOf, runOf, spacedLetters } from '@/shared/critique/run';
import { fillStockNote } from '@/shared/critique/stock-note';
import { suggestedSpacing } from '@/shared/critique/suggested-spacing';
import type { StockNoteView } from '@/shared/schemas/note';
import { Deviations } from './deviations';
import { Earlier } from './earlier';
import { type Acts, deskKeys, KeyHelp, useKeys } from './keys';
import { actsOfLooks, LooksRow, useLooks } from './looks';
import { Margin } from './margin';
import { Marks } from './marks';
import { NoteForm, StockNotes, suggestedFirst, useStock } from './note-form';
import { marksOf, Sheet, tiesOf, overlaysOf } from './sheet';
import { useClaim, useGoing, useQueue } from './queue';
import { useStoredText, useNotes } from './notes';
import { Suggestion, usePlace, Where } from './place';
import style from './desk.module.css';

/** The critique desk on one line: look first, ask for the deviations, leave notes, give marks, go on. */
export function Desk({ desk }: { desk: DeskLine }) {
  const { proof, line, pack, spacing, measure, comparison, personKey, go } = desk;
  const letters = spacedLetters(pack);
  const { leaving, go: leaveFor } = useGoing();
  const area = useRef<HTMLTextAreaElement>(null);
  const marking = useRef<HTMLButtonElement>(null);
  const [deviations, setDeviations] = useState(false);
  const [help, setHelp] = useState(false);
  const [earlierShown, setEarlierShown] = useState(false);
  const [shownNote, setShownNote] = useState<string | null>(null);
  const [overlayIndex, setOverlayIndex] = useState(-1);
  const [message, setMessage] = useState('');
  const stored = useStock(desk.course.id, desk.stock, setMessage);
  const [keysOff, setKeysOff] = useStoredText(personKey, 'critique-keys-off');
  const [text, keepText] = useStoredText(personKey, `note/${proof.token}/${line.specimenVersionId}`);
  const place = usePlace(spacing);
  const notes = useNotes(personKey, { proofId: proof.token, specimenVersionId: line.specimenVersionId }, desk.notes);
  const queue = useQueue(desk, { go: leaveFor, say: setMessage });
  const { heldBy } = useClaim(proof.token, desk.task.heldBy, desk.task.state === 'done' || queue.letGo);

  const looks = useLooks();
  const faults = faultsOf(measure, comparison);
  const faultHere = faults.find(
    ({ first, last }) => place.run !== null && first === place.run.first && last === place.run.last,
  );
  // Before the marker asks for the deviations, the order of the stock must not give away what was measured.
  const stock = suggestedFirst(stored.stock, deviations ? (faultHere?.fault ?? '') : '');
  const overlays = overlaysOf(desk);
  // Changes since the last round are easiest to see with that round as the overlay.
  const under = overlays[overlayIndex] ?? (earlierShown && desk.previous ? (overlays[0] ?? null) : null);
  const nextOverlay = () => setOverlayIndex(overlayIndex + 1 >= overlays.length ? -1 : overlayIndex + 1);
  const noteShown = notes.notes.find(({ id }) => id === shownNote);
  const inPlace = place.suggestion
    ? suggestedSpacing(spacing, place.run, place.suggestion)
    : noteShown?.suggestion
      ? suggestedSpacing(
          spacing,
          runOf(noteShown.fromPair, noteShown.toPair, spacing.offsets.length),
          noteShown.suggestion,
        )
      : null;
  const lettersHere = place.run === null ? letters : letters.slice(place.run.first, place.run.last + 2);
  const here = place.run === null ? 'the line' : lettersOf(letters, place.run);

  async function leave(body: string) {
    const answer = await notes.write({
      proofId: proof.token,
      specimenVersionId: line.specimenVersionId,
      requestKey: crypto.randomUUID(),
      fromPair: place.run?.first ?? null,
      toPair: place.run?.last ?? null,
      body,
      suggestion: place.suggestion,
    });
    setMessage(
      answer.ok ? `Note on ${here} saved.` : `Not saved yet: ${answer.message} The note is kept on this device.`,
    );
    if (answer.ok || answer.again) place.suggest(null);
  }

  function saveTyped() {
    const body = text.trim();
    if (body === '') return;
    keepText('');
    area.current?.blur();
    void leave(body);
  }

  const leaveStock = (note: StockNoteView) =>
    void leave(fillStockNote(note.body, lettersHere, note.fault || (deviations ? (faultHere?.fault ?? '') : '')));

  function nextFault() {
    setDeviations(true);
    if (faults.length === 0) return setMessage('The measure finds no conspicuous pair.');
    const at = faults.findIndex((fault) => fault === faultHere);
    const next = faults[(at + 1) % faults.length]!;
    place.choose({ first: next.first, last: next.last });
    setMessage(`${lettersOf(letters, next)}: ${next.sentence || next.fault}`);
  }

  async function takeBack() {
    const last = notes.notes.findLast(({ entries }) => entries.every(({ by }) => by === 'staff'));
    if (!last) return setMessage('There is no note to withdraw on this line.');
    const answer = await notes.change(`${last.id}/state`, 'PUT', { version: last.version, to: 'removed' });
    setMessage(answer.ok ? 'Withdrawn.' : answer.message);
    if (answer.ok) notes.forget(last.id);
  }

  const goTo = (address: string | null, none: string) => () =>
    address === null ? setMessage(none) : leaveFor(address);
  const acts: Acts = {
    j: () => place.step(1),
    f: () => place.step(-1),
    J: () => place.extend(1),
    F: () => place.extend(-1),
    0: () => place.choose(null),
    i: nextFault,
    x: () => setDeviations(!deviations),
    ArrowRight: () => place.nudge(5),
    ArrowLeft: () => place.nudge(-5),
    ArrowUp: () => place.nudge(1),
    ArrowDown: () => place.nudge(-1),
    Delete: () => place.suggest(null),
    Backspace: () => place.suggest(null),
    r: () => area.current?.focus(),
    z: () => void takeBack(),
    b: nextOverlay,
    e: () => setEarlierShown(!earlierShown),
    v: () => marking.current?.focus(),
    p: goTo(go.nextStudent, 'This is the last proof of the queue.'),
    P: goTo(go.previousStudent, 'This is the first proof of the queue.'),
    n: goTo(go.nextLine, 'This is the last line of the last proof.'),
    N: goTo(go.previousLine, 'This is the first line of this proof.'),
    a: () => leaveFor(`/exercises/${desk.exercise.id}/rounds/${desk.round.number}/specimens/${line.specimenId}`),
    q: () => void queue.takeNext(),
    k: () => void queue.skip(),
    G: () => void queue.giveBack(),
    '?': () => setHelp(!help),
    ...Object.fromEntries(stock.slice(0, 9).map((note, index) => [String(index + 1), () => leaveStock(note)])),
  };
  useKeys({ ...actsOfLooks(looks), ...acts }, keysOff !== 'yes' && !leaving);

  return (
    <div className={style.desk}>
      <div className={style.main}>
        <Sheet
          line={line}
          pack={pack}
          spacing={inPlace ?? spacing}
          under={inPlace ? spacing : (under?.spacing ?? null)}
          underLabel={inPlace ? 'the line as it was sent' : (under?.label ?? null)}
          marks={deviations ? marksOf(faults) : []}
          ties={tiesOf(notes.notes)}
          run={place.run}
          choose={place.choose}
          looks={looks.looks}
          moved={earlierShown ? (desk.since?.moved ?? []) : []}
        />
        <div className={style.dock}>
          <LooksRow looks={looks} />
          <div className={style.asked}>
            <Button small aria-pressed={deviations} onClick={() => setDeviations(!deviations)}>
              {deviations ? 'Hide the deviations' : 'Show the deviations'}
            </Button>
            <Button small onClick={nextOverlay}>
              {under ? `Under it: ${under.label}` : 'Overlay another spacing'}
            </Button>
            <Button small aria-pressed={earlierShown} onClick={() => setEarlierShown(!earlierShown)}>
              Since the last round
            </Button>
            <Button small kind="text" aria-expanded={help} onClick={() => setHelp(!help)}>
              Keys
            </Button>
          </div>
          <Where letters={letters} place={place} sent={spacing.offsets} />
          <Suggestion
            letters={letters}
            run={place.run}
            suggestion={place.suggestion}
            sent={spacing.offsets}
            place={place}
          />
        </div>
        {help && (
          <KeyHelp
            list={deskKeys}
            on={keysOff !== 'yes'}
            turn={(on) => setKeysOff(on ? '' : 'yes')}
            close={() => setHelp(false)}
          />
        )}
      </div>
      <div className={style.margin}>
        <aside className={style.column} aria-label="Notes" tabIndex={0}>
          <p role="status" className={style.message}>
            {message}
          </p>
          {deviations && (
            <section aria-label="Deviations">
              <Deviations
                letters={letters}
                measure={measure}
                comparison={comparison}
                across={desk.across}
                chosen={place.run?.first ?? null}
                choose={(pair) => place.choose({ first: pair, last: pair })}
              />
            </section>
          )}
          {earlierShown && (
            <section aria-label="Since the last round">
              <Earlier
                since={desk.since}
                earlier={desk.earlier}
                letters={letters}
                choose={(pair) => place.choose({ first: pair, last: pair })}
              />
            </section>
          )}
          <Margin
            desk={desk}
            letters={letters}
            notes={notes}
            shown={shownNote}
            show={(id) => setShownNote(shownNote === id ? null : id)}
          />
          <NoteForm letters={here} text={text} keep={keepText} save={saveTyped} area={area} />
          <StockNotes
            stock={stock}
            letters={lettersHere}
            fault={deviations ? (faultHere?.fault ?? '') : ''}
            leave={leaveStock}
            drop={(note) => void stored.drop(note)}
            keepAsStock={(shared, fault) => void stored.keep(text, shared, fault)}
            mayKeep={text.trim() !== ''}
          />
        </aside>
        <section className={style.marks} aria-labelledby="marks-title">
          <div className={style.marksHead}>
            <h2 id="marks-title">Marks of the whole proof</h2>
            <Button small kind="text" onClick={() => void queue.takeNext()}>
              Next proof
            </Button>
            {desk.queue.skipped ? (
              <Button small kind="text" onClick={() => void queue.takeUp()}>
                Resume this one
              </Button>
            ) : (
              <Button small kind="text" onClick={() => void queue.skip()}>
                Skip it for now
              </Button>
            )}
            {!heldBy && desk.task.state === 'open' && (
              <Button small kind="text" onClick={() => void queue.giveBack()}>
                Give it back
              </Button>
            )}
          </div>
          <Marks
            proof={proof.token}
            timeZone={desk.course.timeZone}
            marks={desk.marks}
            task={desk.task}
            two={desk.two}
            heldBy={heldBy}
            first={marking}
            next={() => void queue.takeNext()}
          />
        </section>
      </div>
    </div>
  );
}
