import { type AddFault, noDoubles } from './addFault.ts';
import { checkHold } from './checkHold.ts';
import type { Kit } from './kit.ts';
import type { Reference, TaskTemplate } from './order.ts';

/** The order of work as it is written, before it is written out for any length. */
export function checkOrder(kit: Kit, add: AddFault): void {
  noDoubles('/order', kit.order, add);
  const holds = new Set(kit.order.filter(({ hold }) => hold).map(({ id }) => id));
  const guarding = new Set(kit.order.flatMap(({ after }) => after.map(({ task }) => task)));
  for (const [row, template] of kit.order.entries()) {
    const path = `/order/${row}`;
    checkEstimates(template, path, add);
    checkRepeat(template, path, kit, add);
    checkOnly(template, path, kit, add);
    checkUses(template, path, kit, add);
    checkReferences(template, path, kit, add);
    checkHold(template, path, kit, add);
    if (
      template.hold &&
      !template.opens &&
      !guarding.has(template.id) &&
      !template.before?.length
    ) {
      add(`${path}/hold`, 'a hold that nothing comes after', 'a task that it guards');
    }
    if (template.effect === 'move' && !template.after.some(({ task }) => holds.has(task))) {
      add(`${path}/after`, 'a move without a hold before it', 'a hold among what it comes after');
    }
    if (template.keepOff && template.cautions.length === 0) {
      add(`${path}/cautions`, 'none', 'at least one: keep-off work can hurt');
    }
  }
  checkOpening(kit, add);
}

function checkOpening(kit: Kit, add: AddFault): void {
  const opening = kit.order.filter(({ opens }) => opens);
  if (opening.length !== 1) {
    add('/order', `${opening.length} tasks that open`, 'exactly one');
  }
  for (const template of opening) {
    const path = `/order/${kit.order.indexOf(template)}`;
    if (!template.hold) {
      add(`${path}/opens`, 'a task without a hold', 'a hold: only an inspection opens a bridge');
    }
    if (template.repeat) {
      add(`${path}/repeat`, template.repeat.by, 'nothing: a bridge opens once');
    }
  }
}

function checkEstimates(template: TaskTemplate, path: string, add: AddFault): void {
  const { quick, likely, slow } = template.minutes;
  if (!(quick <= likely && likely <= slow)) {
    add(`${path}/minutes`, `${quick}, ${likely}, ${slow}`, 'quick <= likely <= slow');
  }
  for (const [at, { people }] of template.needs.entries()) {
    const { least, usual, most } = people;
    if (!(least <= usual && usual <= most)) {
      add(`${path}/needs/${at}/people`, `${least}, ${usual}, ${most}`, 'least <= usual <= most');
    }
  }
}

function checkRepeat(template: TaskTemplate, path: string, kit: Kit, add: AddFault): void {
  const { repeat } = template;
  if (!repeat) {
    return;
  }
  const only = (field: 'bays' | 'stages' | 'size' | 'rearFirst' | 'sides', by: string[]) => {
    if (repeat[field] !== undefined && !by.includes(repeat.by)) {
      add(`${path}/repeat/${field}`, `${field} by ${repeat.by}`, `only by ${by.join(' or ')}`);
    }
  };
  only('bays', ['bay']);
  only('stages', ['stage']);
  only('size', ['lot']);
  only('rearFirst', ['bay', 'lot']);
  only('sides', ['bay', 'lot', 'section', 'stage', 'bank']);
  if (repeat.by === 'lot' && repeat.size === undefined) {
    add(`${path}/repeat/size`, 'nothing', 'how many bays make a lot');
  }
  if (repeat.by === 'section' && !kit.nose) {
    add(`${path}/repeat/by`, 'section', 'something else: this kit has no nose');
  }
  if (repeat.by === 'bank' && template.bank) {
    add(`${path}/bank`, template.bank, 'nothing: the task repeats by bank');
  }
}

/** What is wanted only sometimes has to be about that which decides it. */
function checkOnly(template: TaskTemplate, path: string, kit: Kit, add: AddFault): void {
  const { only, repeat, bank } = template;
  if (only === 'soft-bank' && !bank && repeat?.by !== 'bank') {
    add(`${path}/only`, only, 'a task on a bank: by its bank, or repeated by bank');
  }
  if (only === 'counterweight' && !(repeat?.by === 'stage' && kit.launch?.counterweight)) {
    add(`${path}/only`, only, 'a task repeated by stage, in a kit with weights for the tail');
  }
}

function checkUses(template: TaskTemplate, path: string, kit: Kit, add: AddFault): void {
  const groups = new Set(kit.parts.map(({ group }) => group));
  for (const [at, group] of (template.uses ?? []).entries()) {
    if (!groups.has(group)) {
      add(`${path}/uses/${at}`, group, `a group of parts: ${[...groups].join(', ')}`);
    }
  }
}

function checkReferences(template: TaskTemplate, path: string, kit: Kit, add: AddFault): void {
  const templates = new Set(kit.order.map(({ id }) => id));
  const loads = new Set(kit.loads.map(({ id }) => id));
  const check = (field: string, references: readonly Reference[]) => {
    for (const [at, { task, load }] of references.entries()) {
      if (!templates.has(task)) {
        add(`${path}/${field}/${at}/task`, task, 'the id of a task in this order');
      }
      if (load === 'used' ? !template.uses?.length : load !== undefined && !loads.has(load)) {
        const expected = `the id of a load, or "used" in a task that says what it uses`;
        add(`${path}/${field}/${at}/load`, load ?? '', expected);
      }
    }
  };
  check('after', template.after);
  check('before', template.before ?? []);
  check('hold/redo', template.hold?.redo ?? []);
}
