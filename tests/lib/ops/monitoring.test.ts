import { channel } from 'node:diagnostics_channel';
import { EventEmitter } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { operationChannel } from '@/lib/access/operation';
import { addJob } from '@/lib/data/jobs';
import { answersHealth } from '@/lib/ops/health';
import { lastBackupFile } from '@/lib/ops/last-backup';
import { processMetrics } from '@/lib/ops/metrics';
import { describeOnBothDatabases } from '../../fixtures/databases';

const now = new Date('2027-03-08T10:00:00Z');
const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-metrics-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What a request of this kind is answered with; null where it is left to the framework. */
async function asked(url: string, { stopping = false, method = 'GET' } = {}): Promise<[number, string] | null> {
  return new Promise((resolve) => {
    let status = 0;
    const response = {
      writeHead: (code: number) => {
        status = code;
        return response;
      },
      end: (text: string) => {
        resolve([status, text.trim()]);
        return response;
      },
    } as unknown as ServerResponse;
    if (!answersHealth({ url, method }, response, { stopping, now })) resolve(null);
  });
}

it('leaves every other request to the framework', async () => {
  expect(await asked('/')).toBeNull();
  expect(await asked('/healthz/more')).toBeNull();
  expect(await asked('/healthz', { method: 'POST' })).toBeNull();
});

it('is alive while it stops, and not ready', async () => {
  expect(await asked('/healthz', { stopping: true })).toEqual([200, 'running']);
  expect(await asked('/readyz', { stopping: true })).toEqual([503, 'stopping']);
});

describeOnBothDatabases('what is told of a running server', (suite) => {
  const figures = async () => {
    const text = await processMetrics({ dataDirectory: folder }).text(now);
    // OpenMetrics 1.0: the last line of an exposition.
    expect(text.trimEnd().endsWith('# EOF')).toBe(true);
    return new Map(
      text
        .split('\n')
        .flatMap((line) =>
          line === '' || line.startsWith('#') ? [] : [line.split(/ (?=[^ ]*$)/) as [string, string]],
        ),
    );
  };

  it('is ready when the database answers', async () => {
    expect(await asked('/readyz?from=proxy')).toEqual([200, 'ready']);
  });

  it('counts the jobs that wait, and since when; a later one and one that is done are not waiting', async () => {
    const job = { kind: 'welcome', payload: {} };
    await addJob(suite.db, { ...job, key: 'due', dueAt: new Date(now.getTime() - 90_000) }, now);
    await addJob(suite.db, { ...job, key: 'later', dueAt: new Date(now.getTime() + 90_000) }, now);
    await addJob(suite.db, { ...job, key: 'done', dueAt: new Date(now.getTime() - 900_000) }, now);
    await suite.db.job.updateMany({ where: { key: 'done' }, data: { doneAt: now } });
    const all = await figures();
    expect(all.get('kerncrit_database_up')).toBe('1');
    expect(all.get('kerncrit_jobs_waiting')).toBe('1');
    expect(all.get('kerncrit_oldest_job_seconds')).toBe('90');
  });

  it('tells the age of the last backup, and nothing before the first', async () => {
    expect((await figures()).has('kerncrit_last_backup_age_seconds')).toBe(false);
    writeFileSync(lastBackupFile(folder), '2027-03-08T09:00:00.000Z\n');
    expect((await figures()).get('kerncrit_last_backup_age_seconds')).toBe('3600');
    rmSync(lastBackupFile(folder));
  });

  it('counts operations by name and outcome, requests by method and status', async () => {
    const metrics = processMetrics({ dataDirectory: folder });
    channel(operationChannel).publish({ name: 'save-draft', outcome: 'done', seconds: 0.02 });
    channel(operationChannel).publish({ name: 'save-draft', outcome: 'CONFLICT', seconds: 0.02 });
    for (const method of ['GET', 'INVENTED-BY-A-STRANGER']) {
      const response = Object.assign(new EventEmitter(), { statusCode: 200 }) as unknown as ServerResponse;
      metrics.timeRequest({ method }, response);
      response.emit('close');
    }
    const text = await metrics.text(now);
    for (const outcome of ['done', 'CONFLICT'])
      expect(text).toContain(`kerncrit_operation_seconds_count{operation="save-draft",outcome="${outcome}"} 1`);
    expect(text).toContain('kerncrit_request_seconds_count{method="GET",status="200"} 1');
    expect(text).toContain('kerncrit_request_seconds_count{method="other",status="200"} 1');
    expect(text).not.toContain('STRANGER');
  });
});
