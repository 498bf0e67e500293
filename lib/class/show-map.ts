import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import { pageOf } from '@/shared/schemas/page';
import { showMapInput } from '@/shared/schemas/class';
import { columnsOf, valueAt } from '@/shared/class/map-view';
import { classSummary } from './class-summary';
import { readMap } from './read-map';
import { roundAskedFor } from './round-asked-for';

const rowsPerPage = 20;

/** What stands around the map: its exercise, rounds and lines; and, where asked for, the same numbers as a table. */
export const showMap = operation({
  name: 'show-map',
  allow: 'class:see',
  input: showMapInput,
  run: async ({ data, now, caller }, { exerciseId, round: asked, line, tablePage }) => {
    const { rounds, number } = await roundAskedFor(data, exerciseId, asked);
    const { round, exercise, course } = await roundInHand(data, exerciseId, number);
    const { summary } = await classSummary(data, round, course.id, now);
    const chosen =
      line === 'all'
        ? null
        : (summary.lines.find(({ specimenVersionId }) => specimenVersionId === line) ?? summary.lines[0] ?? null);
    if (line !== null && line !== 'all' && chosen?.specimenVersionId !== line) throw notFound();
    return {
      course: { id: course.id, title: course.title },
      exercise: { id: exercise.id, title: exercise.title },
      rounds: rounds.map((one) => ({ number: one.number, title: one.title })),
      round: number,
      proofs: summary.proofs,
      lines: summary.lines.map(({ specimenVersionId, text }, index) => ({
        id: specimenVersionId,
        text: summary.lines.some((other, place) => place !== index && other.text === text)
          ? `${text} (line ${index + 1})`
          : text,
      })),
      line: line === 'all' ? 'all' : (chosen?.specimenVersionId ?? null),
      compared: (chosen ? [chosen] : summary.lines).some((each) => each.compared > 0),
      table: tablePage === null || chosen === null ? null : await table(chosen.specimenVersionId, tablePage),
    };

    async function table(specimenVersionId: string, askedPage: number) {
      const map = await readMap(caller, { exerciseId, roundNumber: number, line: specimenVersionId }, { now });
      const columns = columnsOf(map.lines);
      const { page, pages, from } = pageOf(askedPage, map.students.length, rowsPerPage);
      return {
        page,
        pages,
        pairs: columns.map(({ letters }) => letters),
        rows: map.students
          .slice(from, from + rowsPerPage)
          .map(({ name }, index) => ({ name, values: columns.map((column) => valueAt(map, from + index, column)) })),
      };
    }
  },
});
