import { type ReactNode, useId } from 'react';

/** What the control must carry so that its label, its hint and its fault are tied to it. */
export type FieldTies = {
  readonly id: string;
  readonly 'aria-describedby'?: string;
  readonly 'aria-invalid'?: true;
};

type Props = {
  readonly label: string;
  readonly hint?: string | undefined;
  /** What is wrong with it, as a sentence; nothing when it is right. */
  readonly fault?: string | undefined;
  readonly className?: string;
  readonly children: (ties: FieldTies) => ReactNode;
};

/** One thing to fill in: its label above, what it is for and what is wrong with it below. */
export function Field({ label, hint, fault, className, children }: Props) {
  const id = useId();
  const described = [hint ? `${id}-hint` : '', fault ? `${id}-fault` : ''].filter(Boolean);
  const ties: FieldTies = {
    id,
    ...(described.length > 0 && { 'aria-describedby': described.join(' ') }),
    ...(fault && { 'aria-invalid': true }),
  };
  return (
    <div className={className ? `field ${className}` : 'field'}>
      <label htmlFor={id}>{label}</label>
      {children(ties)}
      {hint ? (
        <p id={`${id}-hint`} className="second small">
          {hint}
        </p>
      ) : null}
      {fault ? (
        <p id={`${id}-fault`} className="fault">
          {fault}
        </p>
      ) : null}
    </div>
  );
}
