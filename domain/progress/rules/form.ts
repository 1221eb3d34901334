import { type Refusal, refusal } from '../../refusal.ts';
import type { Command } from '../command.ts';
import { isInstant } from '../instants.ts';

/** Refuses what cannot be read: times that do not parse, counts that contradict themselves. Schemas were checked before. */
export function refuseForm(command: Command): Refusal | null {
  for (const time of ['happenedAt', 'receivedAt'] as const)
    if (!isInstant(command[time])) return timeWrong(time, command[time]);
  switch (command.kind) {
    case 'open-build': {
      const { start, askedFor, zone } = command.body;
      if (!isInstant(start)) return timeWrong('start', start);
      if (askedFor !== null && !isInstant(askedFor)) return timeWrong('askedFor', askedFor);
      return isZone(zone)
        ? null
        : refusal(
            'form-wrong',
            `"${zone}" is no time zone: give one such as Europe/Berlin or UTC.`,
            ['zone'],
          );
    }
    case 'set-asked-for': {
      const { askedFor } = command.body;
      return askedFor === null || isInstant(askedFor) ? null : timeWrong('askedFor', askedFor);
    }
    case 'tell-off': {
      const { off, of } = command.body;
      return off > of ? tooMany('off', off, of) : null;
    }
    case 'acknowledge-halt': {
      const { people, of } = command.body;
      return people > of ? tooMany('people', people, of) : null;
    }
    default:
      return null;
  }
}

function timeWrong(field: string, found: string): Refusal {
  const sentence = `"${found}" is no time: give date and time in UTC, such as 2026-05-04T11:30:00Z.`;
  return refusal('form-wrong', sentence, [field]);
}

function tooMany(field: string, part: number, whole: number): Refusal {
  return refusal('form-wrong', `${part} of ${whole} cannot be: count again.`, [field]);
}

function isZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
