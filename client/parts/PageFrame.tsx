import { type ReactNode, useEffect, useRef } from 'react';
import { words } from '../words/words.ts';
import { Button } from './Button.tsx';

type Props = {
  /** Title of the browser's tab. */
  readonly title: string;
  readonly header: ReactNode;
  readonly children: ReactNode;
  readonly footer?: ReactNode;
  readonly className?: string;
};

/** A page: header, main and footer as landmarks, a title, and a way past the header by keyboard. */
export function PageFrame({ title, header, children, footer, className }: Props) {
  const main = useRef<HTMLElement>(null);
  useEffect(() => {
    document.title = title;
  }, [title]);
  return (
    <div className={className ? `page ${className}` : 'page'}>
      {/* A fragment link would overwrite the secret in the address: a button moves the focus instead. */}
      <Button className="skip" onClick={() => main.current?.focus()}>
        {words.skip}
      </Button>
      <header>{header}</header>
      <main ref={main} tabIndex={-1}>
        {children}
      </main>
      {footer === undefined ? null : <footer>{footer}</footer>}
    </div>
  );
}
