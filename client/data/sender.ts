import type { Static } from 'typebox';
import { asks } from '#domain/progress/command.ts';
import type { CommandRequest, Receipt } from '#shared/wire.ts';
import type { WireKind, wireBodies } from '#shared/wireBodies.ts';
import { type Api, receiptOf } from './api.ts';
import { backoff } from './backoff.ts';
import { createCell, type Readable } from './cell.ts';
import type { Clock } from './ports/clock.ts';
import type { Ids } from './ports/ids.ts';

/** An ask that got no answer in time. It may have arrived: the person looks before asking again. */
export type NoAnswer = { readonly id: string; readonly outcome: 'no-answer' };
export type Sent = Receipt | NoAnswer;

/** One command on its way, as the page shows it. `waiting`: not sent, trying again. */
export type Sending = {
  readonly id: string;
  readonly kind: WireKind;
  readonly body: unknown;
  readonly saidBy?: string;
  readonly happenedAt: string;
  readonly state: 'sending' | 'waiting' | 'recorded' | 'refused' | 'no-answer';
  readonly tries: number;
  readonly receipt: Receipt | null;
  /** Taken back before its answer came: it counts for nothing here, and is withdrawn if it has arrived. */
  readonly takenBack?: true;
};

export type Extra = {
  /** By radio: who said it. */
  readonly saidBy?: string;
  /** ISO 8601 UTC by the device's clock, when it happened before now. */
  readonly happenedAt?: string;
};

export type Send = <Kind extends WireKind>(
  kind: Kind,
  body: Static<(typeof wireBodies)[Kind]>,
  extra?: Extra,
) => Promise<Sent>;

export type Sender = Readable<readonly Sending[]> & {
  readonly send: Send;
  /** Takes an answered command off the page. */
  readonly dismiss: (id: string) => void;
  /** Takes a tell back that has no answer yet: one never tried leaves no trace, another is withdrawn once it is in. */
  readonly takeBack: (id: string, why: string) => void;
  /** The network may be back: try now. */
  readonly nudge: () => void;
};

/** A tell is a fact and waits as long as it must; an ask is a decision for now and goes stale. */
const askPatience = 30_000;
/** A halt is tried again this soon, however long it has failed: milliseconds. */
const haltPause = 2000;
/** Answered commands kept for "what became of it". */
const kept = 30;

type Job = {
  sending: Sending;
  resolve: (sent: Sent) => void;
  born: number;
  /** Why it was taken back. */
  back?: string;
};

/** Sends commands of one link, in order, each under one id for good. A halt waits for nothing. */
export function createSender(api: Api, clock: Clock, ids: Ids, build: string): Sender {
  const cell = createCell<readonly Sending[]>([]);
  const queue: Job[] = [];
  const unanswered = new Map<string, Job>();
  let working = false;
  /** Everyone who rests between two tries: the queue, and each halt beside it. */
  const resting = new Set<() => void>();

  const show = (job: Job, change: Partial<Sending>): void => {
    job.sending = { ...job.sending, ...change };
    const others = cell.read().filter((one) => one.id !== job.sending.id);
    const open = others.filter(isOpen);
    const closed = others.filter((one) => !isOpen(one)).slice(-kept);
    cell.write(inOrder([...closed, ...open, job.sending]));
  };

  async function attempt(job: Job): Promise<boolean> {
    const { id, kind, body, saidBy, happenedAt, tries } = job.sending;
    show(job, { tries: tries + 1 });
    const request: CommandRequest = {
      id,
      kind,
      body,
      ...(saidBy === undefined ? {} : { saidBy }),
      happenedAt,
      sentAt: new Date(clock.now()).toISOString(),
    };
    const answer = await api.post<Receipt>(`/api/builds/${build}/commands`, request);
    const busy = answer.kind === 'refused' && answer.status === 429;
    const receipt = busy ? null : receiptOf(id, answer);
    if (receipt) {
      unanswered.delete(id);
      show(job, { state: receipt.outcome, receipt });
      job.resolve(receipt);
      if (job.back !== undefined && receipt.outcome === 'recorded') {
        void send('withdraw', { entry: receipt.entry, why: job.back });
      }
      return true;
    }
    if (kind in asks && clock.now() - job.born > askPatience) {
      unanswered.delete(id);
      show(job, { state: 'no-answer' });
      job.resolve({ id, outcome: 'no-answer' });
      return true;
    }
    // What stands behind one that does not get through does not get through either.
    for (const each of [job, ...queue]) show(each, { state: 'waiting' });
    return false;
  }

  function rest(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      const go = (): void => {
        cancel();
        resting.delete(go);
        resolve();
      };
      const cancel = clock.after(milliseconds, go);
      resting.add(go);
    });
  }

  async function finish(job: Job): Promise<void> {
    while (!(await attempt(job))) {
      const pause = backoff(job.sending.tries);
      await rest(job.sending.kind === 'halt' ? Math.min(haltPause, pause) : pause);
    }
  }

  async function work(): Promise<void> {
    if (working) return;
    working = true;
    for (let job = queue.shift(); job; job = queue.shift()) await finish(job);
    working = false;
  }

  const send: Send = (kind, body, extra = {}) =>
    new Promise((resolve) => {
      const job: Job = {
        born: clock.now(),
        resolve,
        sending: {
          id: ids.mint(),
          kind,
          body,
          ...(extra.saidBy === undefined ? {} : { saidBy: extra.saidBy }),
          happenedAt: extra.happenedAt ?? new Date(clock.now()).toISOString(),
          state: cell.read().some(isUnsent) ? 'waiting' : 'sending',
          tries: 0,
          receipt: null,
        },
      };
      unanswered.set(job.sending.id, job);
      show(job, {});
      if (kind === 'halt') {
        void finish(job);
      } else {
        queue.push(job);
        void work();
      }
    });

  function takeBack(id: string, why: string): void {
    const job = unanswered.get(id);
    if (!job || job.sending.kind === 'halt' || job.sending.kind in asks) return;
    if (job.sending.tries > 0) {
      job.back = why;
      show(job, { takenBack: true });
      return;
    }
    unanswered.delete(id);
    queue.splice(queue.indexOf(job), 1);
    cell.write(cell.read().filter((one) => one.id !== id));
    job.resolve({ id, outcome: 'no-answer' });
  }

  return {
    read: cell.read,
    subscribe: cell.subscribe,
    send,
    takeBack,
    dismiss: (id) => cell.write(cell.read().filter((one) => one.id !== id || isOpen(one))),
    nudge: () => {
      for (const go of [...resting]) go();
    },
  };
}

/** Tried and not through, or behind one that is not. */
export function isUnsent(one: Sending): boolean {
  return one.state === 'waiting';
}

/** Not answered yet: such a command never leaves the page. */
export function isOpen(one: Sending): boolean {
  return one.state === 'sending' || one.state === 'waiting';
}

function inOrder(all: readonly Sending[]): readonly Sending[] {
  return [...all].sort((a, b) => a.happenedAt.localeCompare(b.happenedAt));
}
