import { type RefObject, useLayoutEffect, useState } from 'react';
import type { SizePx } from './camera.ts';

/** Size of an element, px; null until it has been laid out. */
export function useElementSize(ref: RefObject<HTMLElement | null>): SizePx | null {
  const [size, setSize] = useState<SizePx | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = element;
      if (width > 0 && height > 0) setSize({ width, height });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
