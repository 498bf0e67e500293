import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { localBus, type Bus } from '@/lib/live/bus';
import { postgresqlBus } from '@/lib/live/postgresql-bus';
import { emptyDatabase } from '../../fixtures/databases';

describe('in one process', () => {
  it('tells those who listen to a topic, and nobody when they have stopped', () => {
    const bus = localBus();
    const heard: string[] = [];
    const stop = bus.listen(['wall:1', 'round:2'], () => heard.push('one'));
    bus.listen(['wall:1'], () => heard.push('two'));
    bus.publish('wall:1');
    bus.publish('round:2');
    bus.publish('round:3');
    expect(heard).toEqual(['one', 'two', 'one']);
    stop();
    bus.publish('wall:1');
    expect(heard).toEqual(['one', 'two', 'one', 'two']);
  });
});

describe('across processes, through PostgreSQL', () => {
  let url: string;
  let here: Bus;
  let there: Bus;
  beforeAll(async () => {
    url = await emptyDatabase('postgresql');
    here = postgresqlBus(url);
    there = postgresqlBus(url);
  }, 120_000);
  afterAll(() => Promise.all([here.close(), there.close()]));

  /** Says it until it is heard there: the connections may only just be on their way. */
  async function heardThere(topic: 'wall:7' | 'wall:8' | 'round:9', say: () => void): Promise<number> {
    let heard = 0;
    const stop = there.listen([topic], () => {
      heard += 1;
    });
    for (let tries = 0; heard === 0 && tries < 100; tries += 1) {
      say();
      await wait(100);
    }
    stop();
    return heard;
  }

  it('what is said by one is heard by the other, and once by oneself', async () => {
    let own = 0;
    const stop = here.listen(['wall:7'], () => {
      own += 1;
    });
    let said = 0;
    expect(
      await heardThere('wall:7', () => {
        said += 1;
        here.publish('wall:7');
      }),
    ).toBeGreaterThan(0);
    await wait(200);
    expect(own).toBe(said);
    stop();
  });

  it('a broken connection is made again; who was cut off looks anew, and what was said meanwhile is said', async () => {
    expect(await heardThere('wall:8', () => here.publish('wall:8'))).toBeGreaterThan(0);
    let anew = 0;
    const stop = there.listen(['round:9'], () => {
      anew += 1;
    });
    const breaker = new pg.Client({ connectionString: url });
    await breaker.connect();
    await breaker.query(
      "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'kerncrit live' AND datname = current_database()",
    );
    await breaker.end();
    here.publish('wall:8');
    for (let tries = 0; anew === 0 && tries < 100; tries += 1) await wait(100);
    expect(anew).toBeGreaterThan(0);
    stop();
    expect(await heardThere('round:9', () => here.publish('round:9'))).toBeGreaterThan(0);
  });
});
