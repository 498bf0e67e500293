import { providerOf } from '../open';
import { migrationAdapter } from './adapters';
import { withSchemaEngine } from './engine';
import { readSchema } from './files';

/**
 * The SQL that takes the database at `url` to the schema; null when it is there already.
 * Used to write the next migration (from a scratch database with all earlier ones) and to find drift.
 */
export async function differenceToSchema(url: string): Promise<string | null> {
  const schema = readSchema(providerOf(url));
  const files = [{ path: 'schema.prisma', content: schema }];
  return withSchemaEngine(schema, migrationAdapter(url), async (engine) => {
    const { exitCode, stdout } = await engine.diff({
      from: { tag: 'schemaDatasource', files, configDir: '.' },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    });
    return exitCode === 2 ? stdout : null;
  });
}
