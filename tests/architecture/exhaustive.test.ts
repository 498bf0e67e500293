import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { root } from './source-tree';

/** A union of names, how one more name is added to it, and the files that must not compile until they handle it. */
type Union = { name: string; where: string; from: string; to: string; places: readonly string[] };

const unions: Union[] = [
  {
    name: 'role',
    where: 'shared/schemas/course.ts',
    from: "'assistant', 'student'] as const",
    to: "'assistant', 'student', 'another'] as const",
    places: [
      'shared/schemas/course.ts',
      'lib/access/permissions.ts',
      'lib/course/roster-plan.ts',
      'app/courses/role-words.ts',
      'app/courses/course-frame.tsx',
      'tests/access/row.ts',
    ],
  },
  {
    name: 'kind of export',
    where: 'shared/schemas/export.ts',
    from: "  'agreement',",
    to: "  'agreement',\n  'another',",
    places: ['app/api/exports/[kind]/[id]/route.ts', 'tests/e2e/access.spec.ts'],
  },
  {
    name: 'form of an exported spacing',
    where: 'shared/schemas/export.ts',
    from: "['svg', 'css', 'json'] as const",
    to: "['svg', 'css', 'json', 'another'] as const",
    places: ['shared/schemas/export.ts', 'lib/export/spacing.ts', 'app/_released/export-line.tsx'],
  },
  {
    name: 'finding',
    where: 'shared/schemas/finding.ts',
    from: "  z.object({ kind: z.literal('gap'),",
    to: "  z.object({ kind: z.literal('another'), ...onePair }),\n  z.object({ kind: z.literal('gap'),",
    places: ['shared/wording/finding-words.ts', 'shared/scoring/choose-findings.ts'],
  },
  {
    name: 'way of looking',
    where: 'shared/line/looks.ts',
    from: "  'white' |",
    to: "  'another' | 'white' |",
    places: ['shared/line/looks.ts', 'shared/line/shapes.ts', 'app/_line/looks.ts'],
  },
  {
    name: 'basis of a criterion',
    where: 'shared/schemas/criterion.ts',
    from: "['judgement', 'evenness',",
    to: "['judgement', 'another', 'evenness',",
    places: ['shared/marking/propose-level.ts', 'app/exercises/[exerciseId]/plan/setting-words.ts'],
  },
];

const inRoot = (file: string) => path.join(root, file);

/** The texts of the files that define the unions, each union one name longer. */
const longer = new Map<string, string>();
for (const { where, from, to } of unions) {
  const text = longer.get(inRoot(where)) ?? readFileSync(inRoot(where), 'utf8');
  if (text.split(from).length !== 2) throw new Error(`${where} no longer has one “${from}”.`);
  longer.set(inRoot(where), text.replace(from, to));
}

const places = unions.flatMap((union) => union.places);

/** The messages of the compiler for each place, with the files as they are or with the longer unions. */
function compiled(changed: ReadonlyMap<string, string>): Map<string, string[]> {
  const { config } = ts.readConfigFile(inRoot('tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, files: [], include: [] }, ts.sys, root);
  const host = ts.createCompilerHost({ ...options, incremental: false });
  const read = host.readFile;
  host.readFile = (file) => changed.get(path.normalize(file)) ?? read(file);
  const program = ts.createProgram(
    [inRoot('next-env.d.ts'), ...places.map(inRoot)],
    { ...options, incremental: false },
    host,
  );
  return new Map(
    places.map((place) => [
      place,
      program
        .getSemanticDiagnostics(program.getSourceFile(inRoot(place)))
        .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' ')),
    ]),
  );
}

describe('one more name does not compile until every place handles it', () => {
  const messages = compiled(longer);

  test.each(unions.flatMap((union) => union.places.map((place) => [union.name, place] as const)))(
    '%s: %s',
    (_, place) => {
      expect(messages.get(place)!.filter((message) => message.includes('another'))).not.toEqual([]);
    },
  );
});
