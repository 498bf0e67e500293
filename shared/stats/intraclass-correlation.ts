/**
 * ICC(2,1): how far single ratings by judges drawn at random agree absolutely. Two-way random effects, single rating.
 * Shrout and Fleiss, “Intraclass correlations: uses in assessing rater reliability”, Psychological Bulletin 86 (1979)
 * 420–428.
 * @param ratings one row a thing judged, one column a judge; no gaps.
 * @returns null where the ratings do not vary at all.
 * @throws RangeError for fewer than two rows or columns, or rows of different lengths.
 */
export function intraclassCorrelation(ratings: readonly (readonly number[])[]): number | null {
  const things = ratings.length,
    judges = ratings[0]?.length ?? 0;
  if (things < 2 || judges < 2)
    throw new RangeError(`ICC(2,1) needs two things and two judges or more; there are ${things} and ${judges}.`);
  const ragged = ratings.find((row) => row.length !== judges || row.some((value) => !(Math.abs(value) < Infinity)));
  if (ragged)
    throw new RangeError(
      `ICC(2,1) needs a number from each of ${judges} judges in every row; one row is [${ragged.join(', ')}].`,
    );
  const mean = (values: readonly number[]) => sum(values) / values.length;
  const grand = mean(ratings.map(mean));
  const betweenThings = (judges * sum(ratings.map((row) => square(mean(row) - grand)))) / (things - 1);
  const columns = ratings[0]!.map((_, judge) => mean(ratings.map((row) => row[judge]!)));
  const betweenJudges = (things * sum(columns.map((column) => square(column - grand)))) / (judges - 1);
  const all = sum(ratings.map((row) => sum(row.map((value) => square(value - grand)))));
  const left = (all - betweenThings * (things - 1) - betweenJudges * (judges - 1)) / ((things - 1) * (judges - 1));
  const whole = betweenThings + (judges - 1) * left + (judges * (betweenJudges - left)) / things;
  return all === 0 || whole === 0 ? null : (betweenThings - left) / whole;
}

function sum(values: readonly number[]): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}

function square(value: number): number {
  return value * value;
}
