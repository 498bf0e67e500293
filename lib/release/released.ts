import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { withNamedAuthors } from '@/lib/reference/references';
import { alreadyWritten, entryView, nextSeq } from '@/lib/review/notes';
import { courseSettingsOf } from '@/lib/rows/course';
import { wrongStartOf } from '@/lib/rows/specimen';
import { pairMapOf, spacingOf } from '@/lib/rows/spacing';
import { followPair, pairChange, type PairChange } from '@/shared/critique/pair-change';
import { idSchema } from '@/shared/schemas/id';
import { answerNoteSchema, type NoteEntryView } from '@/shared/schemas/note';
import { type Pack, packSchema } from '@/shared/schemas/pack';
import { type ReleaseSnapshot, releaseSnapshotSchema } from '@/shared/schemas/release';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';

export type ShownRelease = {
  number: number;
  releasedAt: string;
  snapshot: ReleaseSnapshot;
  /** What was answered since in the threads of released notes, by note. */
  answers: Record<string, NoteEntryView[]>;
  /** The lines as they are in the student's present drafts; empty for staff. */
  since: LineSince[];
  mayAnswer: boolean;
};

/**
 * What was released from a proof: to its student, and to staff as the student sees it. Null before there is a release.
 * Nothing is read here but the release itself and the threads of the notes in it.
 */
export const getRelease = operation({
  name: 'get-release',
  allow: 'release:see',
  input: z.strictObject({ proofId: idSchema }),
  run: async (
    { data, actor },
    { proofId },
  ): Promise<{ release: ShownRelease | null; elsewhere: { proofId: string } | null }> => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const own = actor.kind === 'person' && proof.member.userId === actor.userId;
    const [release, elsewhere] = await Promise.all([
      findRelease(data, proofId, own),
      own ? data.releases.ownFromAnother(proofId) : null,
    ]);
    if (!release) return { release: null, elsewhere: elsewhere && { proofId: elsewhere.proofId } };
    const { number, releasedAt, snapshot, answers } = release;
    return {
      release: {
        number,
        releasedAt: releasedAt.toISOString(),
        snapshot,
        answers,
        since: own ? await changesSince(data, proof, snapshot) : [],
        mayAnswer: own,
      },
      elsewhere: elsewhere && elsewhere.number > number ? { proofId: elsewhere.proofId } : null,
    };
  },
});

export type StoredRelease = {
  number: number;
  releasedAt: Date;
  snapshot: ReleaseSnapshot;
  answers: Record<string, NoteEntryView[]>;
};

/**
 * The newest release of a proof, with the names of those who wrote; `own` for the student it went out to, else for
 * staff.
 */
export async function findRelease(data: ScopedData, proofId: string, own: boolean): Promise<StoredRelease | null> {
  const [row] = await (own ? data.releases.ownOfProof(proofId) : data.releases.ofProof(proofId));
  if (!row) return null;
  const course = await data.courses.settingsOfProof(proofId);
  const hidden = course !== null && courseSettingsOf(course).figuresHidden;
  const snapshot = shownTo(z.parse(releaseSnapshotSchema, JSON.parse(row.snapshot)), hidden);
  const threads = await threadsOf(data, snapshot, own);
  return {
    number: row.number,
    releasedAt: row.releasedAt,
    snapshot: await nameInstructors(data, withAuthors(snapshot, threads)),
    answers: answersTo(snapshot, threads),
  };
}

/**
 * What is shown of a release: all of it, or, where the course hides measured figures, all but those. What is stored
 * never changes.
 */
export const shownTo = (snapshot: ReleaseSnapshot, figuresHidden: boolean): ReleaseSnapshot =>
  figuresHidden
    ? { ...snapshot, lines: snapshot.lines.map((line) => ({ ...line, deviations: null, usual: [] })) }
    : snapshot;

type Threads = Map<string, NoteEntryView[]>;

async function threadsOf(data: ScopedData, snapshot: ReleaseSnapshot, own: boolean): Promise<Threads> {
  const ids = snapshot.lines.flatMap(({ notes }) => notes.map(({ id }) => id));
  const entries = await (own ? data.notes.threadsOfSelf(ids) : data.notes.threads(ids));
  const threads: Threads = new Map();
  for (const entry of entries)
    threads.set(entry.noteId, [...(threads.get(entry.noteId) ?? []), entryView(entry, false)]);
  return threads;
}

/** A release stores no names; they are taken from the threads as long as the people are there. */
const withAuthors = (snapshot: ReleaseSnapshot, threads: Threads): ReleaseSnapshot => ({
  ...snapshot,
  lines: snapshot.lines.map((line) => ({
    ...line,
    notes: line.notes.map((note) => ({
      ...note,
      entries: note.entries.map((entry) => ({
        ...entry,
        author: threads.get(note.id)?.find(({ seq }) => seq === entry.seq)?.author ?? null,
      })),
    })),
  })),
});

/** Answers only: an edit of what was released waits for a correction. */
const answersTo = (snapshot: ReleaseSnapshot, threads: Threads): Record<string, NoteEntryView[]> =>
  Object.fromEntries(
    snapshot.lines.flatMap(({ notes }) =>
      notes.map((note) => {
        const last = Math.max(0, ...note.entries.map(({ seq }) => seq));
        return [note.id, (threads.get(note.id) ?? []).filter(({ seq, replaces }) => seq > last && replaces === null)];
      }),
    ),
  );

/** How the pairs of each note on a line have moved since, in the student's present draft. By note id. */
export type LineSince = { specimenVersionId: string; notes: Record<string, PairChange[]> };

type SentProof = NonNullable<Awaited<ReturnType<ScopedData['proofs']['byId']>>>;

/** Holds each released note against the student's present draft; lines without a draft are left out. */
export async function changesSince(
  data: ScopedData,
  proof: SentProof,
  snapshot: ReleaseSnapshot,
): Promise<LineSince[]> {
  const items = new Map(proof.items.map((item) => [item.specimenVersionId, item]));
  const specimenIds = proof.items.map(({ specimenVersion }) => specimenVersion.specimenId);
  const [drafts, versions] = await Promise.all([
    data.releases.ownDrafts(proof.memberId, specimenIds),
    data.releases.ownVersions(specimenIds),
  ]);
  return snapshot.lines.flatMap(({ specimenVersionId, notes }) => {
    const item = items.get(specimenVersionId);
    const draft = item && drafts.get(item.specimenVersion.specimenId);
    if (!item || !draft) return [];
    const own = versions.filter(({ specimenId }) => specimenId === item.specimenVersion.specimenId);
    const from = own.findIndex(({ id }) => id === specimenVersionId);
    const to = own.findIndex(({ id }) => id === draft.specimenVersionId);
    // The map of a version leads from the one before it to it.
    const maps = own.slice(from + 1, to + 1).map((version) => pairMapOf(version) ?? []);
    const [then, now] = [spacingOf(item), spacingOf(draft)];
    const changed = notes.flatMap(({ id, fromPair, toPair, suggestion }) => {
      if (fromPair === null || toPair === null) return [];
      const pairs = Array.from({ length: toPair - fromPair + 1 }, (_, place) => fromPair + place);
      return [
        [
          id,
          pairs.map((pair, place) => pairChange(pair, then, now, followPair(pair, maps), suggestion?.[place] ?? null)),
        ] as const,
      ];
    });
    return [{ specimenVersionId, notes: Object.fromEntries(changed) }];
  });
}

/** A student's answer to a note that was released to them. A note that was not is not there. */
export const answerNote = operation({
  name: 'answer-note',
  allow: 'proof:send',
  input: answerNoteSchema,
  run: ({ data, now }, { noteId, afterSeq, body }) =>
    retryOnConflict(async () => {
      const note = await data.notes.ofSelf(noteId);
      if (!note || !(await wasReleased(data, noteId, note.proofItem.proof.id))) throw notFound();
      const authorId = note.proofItem.proof.memberId;
      if (!alreadyWritten(note.entries, { authorId, afterSeq, body })) {
        await data.notes.addEntry({ noteId, seq: nextSeq(note.entries), authorId, body, replacesSeq: null, now });
      }
      return { noteId };
    }),
});

/** The whole of the release is looked through: what is in it was shown, and nothing else was. */
async function wasReleased(data: ScopedData, noteId: string, proofId: string): Promise<boolean> {
  const releases = await data.releases.ownOfProof(proofId);
  return releases.some(({ snapshot }) =>
    z
      .parse(releaseSnapshotSchema, JSON.parse(snapshot))
      .lines.some(({ notes }) => notes.some(({ id }) => id === noteId)),
  );
}

/** A snapshot with the names of the authors of its references; a release itself stores none. */
export async function nameInstructors(data: ScopedData, snapshot: ReleaseSnapshot): Promise<ReleaseSnapshot> {
  const named = await withNamedAuthors(
    data,
    snapshot.lines.map(({ deviations }) => deviations),
  );
  return { ...snapshot, lines: snapshot.lines.map((line, index) => ({ ...line, deviations: named[index] ?? null })) };
}

/** A line of a proof as it is drawn. */
export type DrawnLine = {
  specimenId: string;
  specimenVersionId: string;
  pack: Pack;
  spacing: Spacing;
  /** What the line began from, where it was wrong on purpose. */
  began?: Spacing | undefined;
  size: Size;
  ground: Ground;
};

/** The lines of a proof, in order, ready to be drawn; for those who may see the proof. */
export async function drawLines(data: ScopedData, proofId: string): Promise<DrawnLine[]> {
  const proof = await data.proofs.byId(proofId);
  if (!proof) return [];
  return proof.items
    .toSorted((one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position)
    .map(({ specimenVersion: version, ...item }) => ({
      specimenId: version.specimen.id,
      specimenVersionId: version.id,
      pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
      spacing: spacingOf(item),
      began: wrongStartOf(version)?.spacing,
      ...sizeAndGroundOf(version),
    }));
}
