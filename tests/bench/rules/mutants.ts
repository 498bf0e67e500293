/**
 * One lost condition each: the text `from` of a file becomes `to`, and the test in `tests/abuse/rules.test.ts` whose
 * name holds `rule` has to fail.
 */
export type RuleMutant = { file: string; from: string; to: string; rule: string };

const at =
  (file: string) =>
  (rule: string, from: string, to: string): RuleMutant => ({ file, from, to, rule });
const records = at('lib/data/records.ts');
const notes = at('lib/data/notes.ts');
const plan = at('lib/release/plan.ts');
const proofs = at('lib/work/proofs.ts');
const rounds = at('lib/work/rounds.ts');
const critique = at('lib/data/critique.ts');
const oneRoster = at('lib/export/oneroster.ts');
const members = at('lib/data/members.ts');

export const ruleMutants: readonly RuleMutant[] = [
  records(
    'own data holds',
    'where: { member: { user: self(actor) } },\n      select: {\n        purpose',
    'where: {},\n      select: {\n        purpose',
  ),
  records(
    'own data holds',
    'where: { member: { user: self(actor) } },\n      select: {\n        number: true,\n        reasoning',
    'where: {},\n      select: {\n        number: true,\n        reasoning',
  ),
  records(
    'own data holds',
    'where: { member: { user: self(actor) } },\n      select: {\n        number: true,\n        releasedAt',
    'where: {},\n      select: {\n        number: true,\n        releasedAt',
  ),
  notes(
    'a withdrawn note',
    '{ proofItem: { proofId: { in: [...proofIds] } }, removedAt: null }, ofStaff] },\n        include',
    '{ proofItem: { proofId: { in: [...proofIds] } } }, ofStaff] },\n        include',
  ),
  plan('unseen: a mark', '[versionId, mark.level, mark.from]', '[versionId]'),
  plan('unseen: a due date', '      late,\n      references', '      references'),
  plan('unseen: what is shown', '      references: settings.referencesShown,\n', ''),
  plan('unseen: a comparison', '[line.id, line.comparisons[0]?.id ?? null]', '[line.id]'),
  plan('unseen: a reply', '[note.id, note.version, note._count.entries]', '[note.id, note.version]'),
  proofs('a closed exercise', "seat.exercise.state !== 'published'", 'false'),
  proofs('takes no late proof', '!latenessOf(current, now).accepted', 'false'),
  rounds('an extension holds', 'member.extensions.find(({ roundId }) => roundId === round.id)', 'member.extensions[0]'),
  rounds(
    'an accommodation for more time',
    'moreTime: accommodationsOf({ accommodations }).moreTime ?? 0',
    'moreTime: 0',
  ),
  rounds(
    'no more than the whole mark',
    'Math.min(100, startedDays * own.lateRule.deductPerDay)',
    'startedDays * own.lateRule.deductPerDay',
  ),
  at('shared/exercise/rounds.ts')(
    'no more than the whole mark',
    'Math.min(100, daysLate * round.lateRule.deductPerDay)',
    'daysLate * round.lateRule.deductPerDay',
  ),
  at('lib/data/terms.ts')('a student’s term', 'releases: {\n                where: { memberId },', 'releases: {'),
  at('lib/data/terms.ts')(
    'a student’s term',
    "orderBy: { number: 'desc' },\n                take: 1",
    "orderBy: { number: 'asc' },\n                take: 1",
  ),
  at('lib/data/exports.ts')(
    'marks for machines',
    "orderBy: { number: 'asc' },\n      select: { memberId: true, number",
    "orderBy: { number: 'desc' },\n      select: { memberId: true, number",
  ),
  oneRoster('marks for machines', 'Math.round(score * 100) / 100', 'Math.round(score)'),
  oneRoster('marks for machines', "score === null ? 'partially graded' : 'fully graded'", "'fully graded'"),
  at('lib/data/drafts.ts')(
    'a trial is never sent',
    'where: { memberId, purpose, specimenVersionId',
    'where: { memberId, specimenVersionId',
  ),
  at('lib/work/bench.ts')(
    'a trial is never sent',
    "student && !trial ? 'work' : 'trial'",
    "student ? 'work' : 'trial'",
  ),
  at('lib/data/seats.ts')(
    'the bench of a draft exercise',
    "!member || (!teaches(member.role) && exercise.state === 'draft')",
    '!member',
  ),
  at('lib/data/seats.ts')('the bench of a draft exercise', 'id: exerciseId, removedAt: null,', 'id: exerciseId,'),
  at('lib/work/bench.ts')(
    'of this round, not of an earlier',
    'proofs.some(({ roundId }) => roundId === current.id)',
    'proofs.length > 0',
  ),
  at('lib/review/order.ts')(
    'hidden names',
    '\n    .sort((one, other) => (one.alias < other.alias ? -1 : 1));\n  const counting',
    ';\n  const counting',
  ),
  at('lib/export/marks.ts')('hidden names', 'if (hidden) lines.sort', 'if (false) lines.sort'),
  at('lib/export/marks.ts')(
    'hidden names',
    "row.hidden ? (alias.get(row.memberId) ?? 'no proof that counts') : row.name",
    'row.name',
  ),
  at('lib/review/notes.ts')('hidden names', "by === 'student' && hideStudents", 'false'),
  notes('a private stock note', '{ OR: [own, { shared: true }] }', '{}'),
  at('lib/data/rounds.ts')(
    'an extension is given',
    'exercise: { course: { members: { some: { id: memberId, removedAt: null } } } }',
    '',
  ),
  at('lib/data/rounds.ts')(
    'an extension is given',
    'some: { id: memberId, removedAt: null }',
    'some: { id: memberId }',
  ),
  critique(
    'newest engine',
    "measurements: { orderBy: { engine: 'desc' }",
    "measurements: { orderBy: { engine: 'asc' }",
  ),
  critique(
    'newest engine',
    "orderBy: [{ referenceSet: { number: 'desc' } }, { engine: 'desc' }]",
    "orderBy: [{ referenceSet: { number: 'asc' } }, { engine: 'desc' }]",
  ),
  at('lib/data/mark-tasks.ts')(
    'can give it back',
    "{ id: taskId, markerId: memberId, state: 'open' }",
    "{ id: taskId, state: 'open' }",
  ),
  members('was removed is listed nowhere', "role: 'student',\n    removedAt: null,", "role: 'student',"),
  at('lib/data/class-summary.ts')(
    'was removed is listed nowhere',
    "where: { courseId, role: 'student', removedAt: null, course: coursesOf(actor, staff) },\n      orderBy",
    "where: { courseId, role: 'student', course: coursesOf(actor, staff) },\n      orderBy",
  ),
  at('lib/data/mark-tasks.ts')(
    'was removed is listed nowhere',
    '{ roundId, memberId, member: { removedAt: null } }',
    '{ roundId, memberId }',
  ),
  at('lib/data/exports.ts')(
    'was removed is listed nowhere',
    'where: { courseId, removedAt: null, userId',
    'where: { courseId, userId',
  ),
  at('lib/data/rounds.ts')(
    'was removed is listed nowhere',
    ', member: { removedAt: null } },\n        include',
    ' },\n        include',
  ),
  at('lib/release/released.ts')(
    'an answer goes under',
    '!note || !(await wasReleased(data, noteId, note.proofItem.proof.id))',
    '!note',
  ),
];
