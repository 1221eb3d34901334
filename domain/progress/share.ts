import { byMoment } from './instants.ts';
import type { Share, TaskTell } from './state.ts';

/** A share and whether its tells contradict each other. */
export type ShareStanding = { readonly share: Share; readonly disputed: boolean };

type Word = 'done' | 'stopped';

/** A share while its tells are gone through. */
type Course = {
  share: Share;
  disputed: boolean;
  /** The last word of each voice on whether the work is done; empty again whenever work goes on. */
  words: Map<string, Word>;
  /** When it was first told done, for a leader who later settles it so. */
  doneAt: string | null;
};

/**
 * Where one crew stands with a task, from the live tells about it. Between two decisions of the leader tells count in
 * the order in which they happened, so that a phone that comes back late does not undo what was told since.
 * When one voice says done and another stopped, the worse holds until the leader settles it; the leader's own tell
 * settles it too. A second "done" changes nothing. Work told to go on after "done" is at work again: the worse holds.
 * In a joint task the leader's decision is about the crew whose tells contradict each other, else about the task.
 */
export function shareOf(crew: string, tells: readonly TaskTell[], joint: boolean): ShareStanding {
  const course: Course = {
    share: { crew, status: 'to-come', startedAt: null, finishedAt: null, why: null, part: 0 },
    disputed: false,
    words: new Map(),
    doneAt: null,
  };
  let between: TaskTell[] = [];
  for (const tell of tells) {
    if (tell.crew !== crew && tell.crew !== '') continue;
    if (tell.kind !== 'settled') {
      between.push(tell);
      continue;
    }
    for (const earlier of inOrderOfTime(between)) take(course, earlier);
    between = [];
    if (course.disputed || !joint) settle(course, tell);
  }
  for (const tell of inOrderOfTime(between)) take(course, tell);
  return { share: course.share, disputed: course.disputed };
}

function inOrderOfTime(tells: readonly TaskTell[]): TaskTell[] {
  return tells.toSorted(byMoment);
}

/** Who speaks: by radio the one who said it, else the one whose link it is. */
function voiceOf(tell: TaskTell): string {
  return tell.saidBy ?? tell.by.name;
}

function take(course: Course, tell: TaskTell): void {
  const { share } = course;
  switch (tell.kind) {
    case 'started':
      if (share.status !== 'done') goOn(course, tell);
      return;
    case 'resumed': {
      const contradicted = share.status === 'done' && course.words.get(voiceOf(tell)) !== 'done';
      goOn(course, tell);
      course.disputed = contradicted && tell.by.role !== 'leader';
      return;
    }
    case 'part':
      if (share.status === 'done') return;
      course.share = {
        ...share,
        part: tell.part ?? share.part,
        status: share.status === 'to-come' ? 'at-work' : share.status,
      };
      return;
    case 'halted':
      if (share.status === 'at-work')
        course.share = { ...share, status: 'stopped', why: tell.why ?? null };
      return;
    case 'finished':
      say(course, tell, 'done');
      return;
    case 'stopped':
      say(course, tell, 'stopped');
      return;
    case 'settled':
      // Decisions part the tells: `shareOf` takes them itself.
      return;
    default:
      tell.kind satisfies never;
  }
}

function goOn(course: Course, tell: TaskTell): void {
  const { share } = course;
  course.words.clear();
  course.disputed = false;
  course.doneAt = null;
  course.share = {
    ...share,
    status: 'at-work',
    startedAt: share.startedAt ?? tell.at,
    finishedAt: null,
    why: null,
    part: share.status === 'done' ? 0 : share.part,
  };
}

function say(course: Course, tell: TaskTell, word: Word): void {
  if (tell.by.role === 'leader') course.words.clear();
  course.words.set(voiceOf(tell), word);
  const words = [...course.words.values()];
  const done = words.includes('done');
  const stopped = words.includes('stopped');
  course.disputed = stopped && done;
  if (word === 'stopped') {
    if (!done) course.doneAt = null;
    stopShare(course, tell.why ?? null);
  } else if (stopped) course.doneAt ??= tell.at;
  else if (course.share.status !== 'done') {
    course.doneAt = tell.at;
    finishShare(course);
  }
}

function stopShare(course: Course, why: string | null): void {
  course.share = { ...course.share, status: 'stopped', finishedAt: null, why };
}

function finishShare(course: Course): void {
  const finishedAt = course.doneAt;
  course.share = { ...course.share, status: 'done', finishedAt, why: null, part: 1 };
}

function settle(course: Course, tell: TaskTell): void {
  course.disputed = false;
  course.words.clear();
  if (tell.settled === 'done') {
    course.doneAt ??= tell.at;
    finishShare(course);
  } else stopShare(course, course.share.why);
}
