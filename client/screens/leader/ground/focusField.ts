/** Brings a place of a form into sight and puts the focus on it, out of the fold that it may lie in. */
export function focusField(field: Element | null | undefined): void {
  const fold = field?.closest<HTMLDetailsElement>('details:not([open])');
  // The form of a new build lies in a fold of its own, which is open while anybody types in it.
  if (fold) fold.open = true;
  if (field instanceof HTMLElement) field.focus();
}
