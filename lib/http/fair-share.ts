import { performance as eventLoopTime } from 'node:perf_hooks';
import { once } from '@/lib/once';

/**
 * How much of one server each party (a person, or the visitors of one network address) may have while others need it
 * too. Requests are weighed by the time they take, so that one page that is heavy to make counts as many light saves.
 */
export type Allowance = {
  /** Server time that comes back, ms a second. */
  readonly perSecond: number;
  /** Server time that may be used at once, ms. */
  readonly burst: number;
  /** How long a party rests after a request while others are there, in times what it took: nobody takes all at once. */
  readonly rest: number;
  /** How many requests may be worked on at the same time: alone on the server, and while others are there. */
  readonly atOnce: { readonly alone: number; readonly beside: number };
  /** How many may wait for their turn, and for how long, ms. What would wait longer is refused. */
  readonly waiting: { readonly most: number; readonly patience: number };
  /** Streams that may be open. */
  readonly streams: number;
};

/** A request that asks for its turn. One of the two is called, once, at once or later. */
export type Asking = {
  begin: (leave: () => void) => void;
  /** @param seconds after which asking again makes sense */
  refuse: (seconds: number) => void;
};

type Waiting = Asking & { until: number };
type Party = {
  allowance: Allowance;
  /** Server time left, ms; below 0 after a request that took more than was left. */
  left: number;
  at: number;
  restsUntil: number;
  inside: number;
  streams: number;
  waiting: Waiting[];
  timer: ReturnType<typeof setTimeout> | undefined;
};

/** One request is never charged more than this, ms: what is slow through no fault of a person's must not lock them out. */
const MOST_CHARGED = 500;
/** For so long after a request its party counts as being there, ms. */
const STILL_THERE = 1_000;
const SWEEP_EVERY = 60_000;

/**
 * Lets requests through, makes them wait, or refuses them. A party alone on the server is charged nothing. While others
 * are there, each is charged the server time it takes: where several requests are worked on at the same time, each
 * counts as its part. Who has used up their allowance waits until some has come back; a party's requests wait in the
 * order in which they came, and nobody waits for another party's.
 */
export class FairShare {
  #parties = new Map<string, Party>();
  /** Server time given to each request inside, ms, since the beginning: grows more slowly the more are inside. */
  #given = 0;
  #givenAt: number;
  #inside = 0;
  /** The party that was there last, and when the last other one was. */
  #last = { key: '', at: Number.NEGATIVE_INFINITY, otherAt: Number.NEGATIVE_INFINITY };
  #sweptAt: number;

  /**
   * @param clock in ms
   * @param worked for how long the process has worked, ms: what waits for a network or for a hash costs nobody anything
   */
  constructor(
    private readonly clock: () => number = () => performance.now(),
    private readonly worked: () => number = () => eventLoopTime.eventLoopUtilization().active,
  ) {
    this.#givenAt = worked();
    this.#sweptAt = clock();
  }

  ask(key: string, allowance: Allowance, asking: Asking): void {
    this.#sweep();
    const party = this.#party(key, allowance);
    if (party.waiting.length >= allowance.waiting.most) {
      asking.refuse(this.#secondsUntilTurn(party));
      return;
    }
    party.waiting.push({ ...asking, until: this.clock() + allowance.waiting.patience });
    this.#letIn(key, party);
  }

  /** Counts a stream; null where the party has as many as it may. @returns what ends it */
  openStream(key: string, allowance: Allowance): (() => void) | null {
    const party = this.#party(key, allowance);
    if (party.streams >= allowance.streams) return null;
    party.streams += 1;
    return once(() => {
      party.streams -= 1;
    });
  }

  #party(key: string, allowance: Allowance): Party {
    const known = this.#parties.get(key);
    if (known) return known;
    const party: Party = {
      allowance,
      left: allowance.burst,
      at: this.clock(),
      restsUntil: Number.NEGATIVE_INFINITY,
      inside: 0,
      streams: 0,
      waiting: [],
      timer: undefined,
    };
    this.#parties.set(key, party);
    return party;
  }

  #letIn(key: string, party: Party): void {
    clearTimeout(party.timer);
    const now = this.clock();
    this.#refill(party, now);
    while (party.waiting.length > 0 && party.waiting[0]!.until <= now)
      party.waiting.shift()!.refuse(this.#secondsUntilTurn(party));
    while (party.waiting.length > 0 && this.#mayBegin(key, party, now)) {
      this.#seen(key, now);
      this.#give();
      party.inside += 1;
      this.#inside += 1;
      const begun = this.#given;
      party.waiting.shift()!.begin(once(() => this.#leave(key, party, begun)));
    }
    const next = party.waiting[0];
    if (!next) return;
    const turn = Math.max(party.restsUntil - now, this.#untilSomeIsLeft(party));
    const wait = Math.min(next.until - now, turn > 0 ? turn : STILL_THERE);
    party.timer = setTimeout(() => this.#letIn(key, party), Math.max(1, Math.ceil(wait)));
    party.timer.unref?.();
  }

  #mayBegin(key: string, party: Party, now: number): boolean {
    const { alone, beside } = party.allowance.atOnce;
    if (!this.#othersAreThere(key, party, now)) return party.inside < alone;
    return party.inside < beside && party.left > 0 && party.restsUntil <= now;
  }

  #leave(key: string, party: Party, begun: number): void {
    const now = this.clock();
    this.#give();
    this.#refill(party, now);
    party.inside -= 1;
    this.#inside -= 1;
    if (this.#othersAreThere(key, party, now)) {
      const charged = Math.min(this.#given - begun, MOST_CHARGED);
      party.left -= charged;
      party.restsUntil = now + charged * party.allowance.rest;
    }
    this.#seen(key, now);
    this.#letIn(key, party);
  }

  #othersAreThere(key: string, party: Party, now: number): boolean {
    if (this.#inside > party.inside) return true;
    const { key: last, at, otherAt } = this.#last;
    return now - (last === key ? otherAt : at) < STILL_THERE;
  }

  #seen(key: string, now: number): void {
    if (this.#last.key !== key) this.#last = { key, at: now, otherAt: this.#last.at };
    else this.#last.at = now;
  }

  #give(): void {
    const worked = this.worked();
    if (this.#inside > 0) this.#given += (worked - this.#givenAt) / this.#inside;
    this.#givenAt = worked;
  }

  #refill(party: Party, now: number): void {
    const { perSecond, burst } = party.allowance;
    party.left = Math.min(burst, party.left + ((now - party.at) / 1000) * perSecond);
    party.at = now;
  }

  /** In ms; 0 where some is. */
  #untilSomeIsLeft = ({ left, allowance }: Party): number => (left > 0 ? 0 : ((1 - left) / allowance.perSecond) * 1000);

  /** About as long as those take who wait already. */
  #secondsUntilTurn(party: Party): number {
    const { patience } = party.allowance.waiting;
    return Math.max(1, Math.ceil((this.#untilSomeIsLeft(party) + patience) / 1000));
  }

  /** Forgets parties that are as if they had never come. */
  #sweep(): void {
    const now = this.clock();
    if (now - this.#sweptAt < SWEEP_EVERY) return;
    this.#sweptAt = now;
    for (const [key, party] of this.#parties) {
      this.#refill(party, now);
      const idle = party.inside === 0 && party.streams === 0 && party.waiting.length === 0;
      if (idle && party.left >= party.allowance.burst) this.#parties.delete(key);
    }
  }
}
