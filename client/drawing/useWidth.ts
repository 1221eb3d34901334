import { type RefObject, useEffect, useRef, useState } from 'react';

/** Width in CSS pixels of the element that carries the ref; `before` until it is measured. */
export function useWidth<Element extends HTMLElement>(
  before: number,
): readonly [RefObject<Element | null>, number] {
  const ref = useRef<Element>(null);
  const [width, setWidth] = useState(before);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => {
      const wide = element.clientWidth;
      if (wide > 0) setWidth(wide);
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
