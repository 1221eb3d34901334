import { type Change, changedCrew } from '#domain/tasks/change.ts';

/**
 * The changes with one more, in their order: what it replaces goes, a link added and taken out again leaves nothing, and
 * what changes of a crew that is itself one of the changes is changed there.
 */
export function withChange(changes: readonly Change[], change: Change): readonly Change[] {
  switch (change.kind) {
    case 'task': {
      const before = changes.find(
        (one): one is typeof change => one.kind === 'task' && one.task === change.task,
      );
      return [...changes.filter((one) => one !== before), { ...before, ...change }];
    }
    case 'crew':
      return [
        ...changes.filter((one) => one.kind !== 'crew' || one.crew.id !== change.crew.id),
        change,
      ];
    case 'crew-name':
    case 'crew-hours': {
      const whole = changes.find((one) => one.kind === 'crew' && one.crew.id === change.crew);
      if (whole?.kind === 'crew') {
        const crew = changedCrew(whole.crew, change);
        return changes.map((one) => (one === whole ? { kind: 'crew', crew } : one));
      }
      const others = changes.filter((one) => one.kind !== change.kind || one.crew !== change.crew);
      const { kind: _, crew: __, ...named } = change;
      return Object.keys(named).length > 0 ? [...others, change] : others;
    }
    case 'load':
      return [...changes.filter((one) => one.kind !== 'load' || one.load !== change.load), change];
    case 'link-add':
      return [...changes, change];
    case 'link-remove': {
      const others = changes.filter(
        (one) =>
          one.kind !== 'link-add' || one.link.from !== change.from || one.link.to !== change.to,
      );
      return others.length < changes.length ? others : [...changes, change];
    }
  }
}
