import { useCallback, useState } from 'react';
import type { RecordPage } from '#shared/wireBuilds.ts';
import { useBuild } from '../../../data/useBuild.ts';
import { beforeAll, canCheck, followChain } from './chain.ts';

export type RecordCheck =
  | { readonly step: 'none' | 'cannot' | 'unreachable' }
  | { readonly step: 'checking'; readonly done: number; readonly of: number }
  | { readonly step: 'good'; readonly count: number; readonly hash: string }
  | { readonly step: 'bad'; readonly number: number };

const page = 500;

/** Reads the whole record and reckons its chain anew, here on the device. */
export function useRecordCheck(): readonly [RecordCheck, () => void] {
  const { api, build } = useBuild();
  const [check, setCheck] = useState<RecordCheck>({ step: 'none' });

  const run = useCallback(async () => {
    if (!canCheck()) return setCheck({ step: 'cannot' });
    let end: { readonly number: number; readonly hash: string } = beforeAll;
    setCheck({ step: 'checking', done: 0, of: 0 });
    for (;;) {
      const answer = await api.get<RecordPage>(
        `/api/builds/${build}/record?after=${end.number}&limit=${page}`,
      );
      if (answer.kind !== 'ok') return setCheck({ step: 'unreachable' });
      const followed = await followChain(end, answer.value.entries);
      if (!followed.ok) return setCheck({ step: 'bad', number: followed.number });
      end = followed.end;
      setCheck({ step: 'checking', done: end.number, of: answer.value.head.number });
      if (answer.value.entries.length === 0 || end.number >= answer.value.head.number) break;
    }
    setCheck({ step: 'good', count: end.number, hash: end.hash });
  }, [api, build]);

  return [check, () => void run()];
}
