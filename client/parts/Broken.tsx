import { Component, type ReactNode } from 'react';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';

/** Stands in when a page throws: says what to do instead of going blank. */
export class Broken extends Component<
  { readonly children: ReactNode },
  { readonly broken: boolean }
> {
  override state = { broken: false };

  static getDerivedStateFromError() {
    return { broken: true };
  }

  override render() {
    if (!this.state.broken) return this.props.children;
    return (
      <main className="page stack-wide">
        <h1>{words.broken.title}</h1>
        <p className="lead">{words.broken.more}</p>
        <p>
          <Button onClick={() => location.reload()}>{words.broken.reload}</Button>
        </p>
      </main>
    );
  }
}
