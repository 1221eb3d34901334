import { type Refusal, refusal } from '../../refusal.ts';
import { type Ask, asks, type CommandKind, type Role, type Tell, tells } from '../command.ts';

const everyAsk = Object.keys(asks) as Ask[];
const everyTell = Object.keys(tells) as Tell[];

const chiefTells = everyTell.filter((kind) => kind !== 'fail-hold');

/** What each role may send. The commander watches only. */
const may: Readonly<Record<Role, ReadonlySet<CommandKind>>> = {
  leader: new Set<CommandKind>([...everyAsk.filter((kind) => kind !== 'pass-hold'), ...everyTell]),
  log: new Set<CommandKind>([...chiefTells, 'start-keep-off']),
  chief: new Set<CommandKind>([...chiefTells, 'start-keep-off']),
  inspector: new Set<CommandKind>(['pass-hold', 'fail-hold', 'halt', 'tell-near-miss', 'withdraw']),
  commander: new Set<CommandKind>(),
};

/** Refuses what a role has no business to send, and says who has. */
export function refuseRole(kind: CommandKind, role: Role): Refusal | null {
  return may[role].has(kind) ? null : refusal('role-cannot', whoCan(kind, role));
}

function whoCan(kind: CommandKind, role: Role): string {
  if (role === 'commander')
    return 'This link only watches: ask the leader or the log keeper on site.';
  if (kind === 'pass-hold' || kind === 'fail-hold')
    return 'Only the inspector decides at a hold point: let the inspector open the inspector’s link and enter name and values.';
  if (role === 'inspector')
    return 'The inspector tells no work: let the chief of the crew or the log keeper tell it.';
  if (kind === 'lift-halt') return 'Only the leader lifts a halt: report to the leader.';
  return 'Only the leader decides this: ask the leader.';
}
