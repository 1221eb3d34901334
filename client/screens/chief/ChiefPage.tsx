import { useBuild } from '../../data/useBuild.ts';
import { LineState } from '../../parts/LineState.tsx';
import { PageFrame } from '../../parts/PageFrame.tsx';
import { words } from '../../words/words.ts';

export default function ChiefPage() {
  const { state } = useBuild();
  return (
    <PageFrame title={words.title(words.program, state.name)} header={<LineState />}>
      <h1>{state.name}</h1>
    </PageFrame>
  );
}
