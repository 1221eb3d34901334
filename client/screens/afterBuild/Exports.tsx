import type { Review } from '#domain/forecast/after/review.ts';
import { crewsCsv, proposalsCsv, reviewJson, tasksCsv } from '#domain/forecast/after/reviewText.ts';
import { useBuild } from '../../data/useBuild.ts';
import { Button } from '../../parts/Button.tsx';
import { words } from '../../words/words.ts';

/** The review as files: tables for a spreadsheet, and the whole. Made here, so that it works with no link too. */
export function Exports({ review }: { readonly review: Review }) {
  const { build } = useBuild();
  const said = words.after.exports;
  const files = [
    { label: said.tasks, name: 'tasks.csv', text: tasksCsv },
    { label: said.crews, name: 'crews.csv', text: crewsCsv },
    { label: said.proposals, name: 'minutes.csv', text: proposalsCsv },
    { label: said.whole, name: 'review.json', text: reviewJson },
  ];
  return (
    <section className="stack no-print after-exports" aria-labelledby="after-exports">
      <h2 id="after-exports">{said.title}</h2>
      <div className="row">
        {files.map(({ label, name, text }) => (
          <Button key={name} onClick={() => keep(said.file(build, name), text(review))}>
            {label}
          </Button>
        ))}
      </div>
    </section>
  );
}

/** Hands the device a file to keep. */
function keep(name: string, text: string): void {
  const type = name.endsWith('.json') ? 'application/json' : 'text/csv;charset=utf-8';
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
