import { FaultList } from '../../parts/FaultList.tsx';
import { words } from '../../words/words.ts';
import { PlanPreview } from './PlanPreview.tsx';
import { TableField } from './TableField.tsx';
import { readTyped, type TypedTables } from './tables.ts';

type Props = {
  readonly tables: TypedTables;
  readonly strict: boolean;
  readonly onChange: (tables: TypedTables) => void;
};

/** The three tables and everything wrong in them, read while they are pasted. */
export function TablesFields({ tables, strict, onChange }: Props) {
  const said = words.newBuild;
  const missing = tables.tasks.trim() === '';
  const read = missing ? null : readTyped(tables);
  return (
    <section className="stack-wide" aria-label={said.tables}>
      <p className="second reading">{said.tablesMore}</p>
      <div className="table-fields">
        {(['tasks', 'links', 'crews'] as const).map((table) => (
          <TableField
            key={table}
            label={said[table]}
            hint={said[`${table}Hint`]}
            fault={strict && missing && table === 'tasks' ? said.tasksMissing : undefined}
            value={tables[table]}
            onChange={(text) => onChange({ ...tables, [table]: text })}
          />
        ))}
      </div>
      <div role="status" className="stack">
        {read?.ok ? (
          <p>
            {said.read(read.value.tasks.length, read.value.links.length, read.value.crews.length)}
          </p>
        ) : null}
        {read && !read.ok ? (
          <>
            <p className="warn">{words.fault.all(read.reason.length)}</p>
            <FaultList faults={read.reason} />
          </>
        ) : null}
      </div>
      {read?.ok ? <PlanPreview key={Object.values(tables).join('\n')} work={read.value} /> : null}
    </section>
  );
}
