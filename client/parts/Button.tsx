import type { ButtonHTMLAttributes } from 'react';

type Props = ButtonHTMLAttributes<HTMLButtonElement> & {
  readonly look?: 'line' | 'solid' | 'plain' | 'accent';
};

/** A button of the page: at least 48 px, and never a form's submit by accident. */
export function Button({ look = 'line', className, type = 'button', ...rest }: Props) {
  const classes = ['button', look === 'line' ? '' : look, className ?? ''].filter(Boolean);
  return <button type={type} className={classes.join(' ')} {...rest} />;
}
