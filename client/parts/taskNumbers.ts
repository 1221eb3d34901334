import type { Work } from '#domain/tasks/work.ts';

/** A sentence of the domain as people on site say it: a task's id in brackets becomes the number on its card. */
export function withNumbers({ tasks }: Pick<Work, 'tasks'>, sentence: string): string {
  const numbers = new Map(tasks.map(({ id, number }) => [id, number]));
  return sentence.replace(/\(([\w.-]+)\)/g, (whole, id) => {
    const number = numbers.get(id);
    return number === undefined ? whole : `(${number})`;
  });
}
