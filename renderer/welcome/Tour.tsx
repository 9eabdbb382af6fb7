import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { focusArea } from '../app/keys.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { endTour } from './endTour.ts';
import { type Box, cardPlace, TOUR_STEPS } from './tourSteps.ts';
import './welcome.css';

/**
 * The tour: a ring round a part of the screen and a card beside it. It lies over the page without stopping any work; the
 * arrow keys, Escape and its buttons lead through it, and once it was read or skipped it does not come by itself again.
 */
export function Tour() {
  const step = useApp((state) => state.tourStep);
  const isCovered = useApp((state) => state.dialog !== null || state.question !== null);
  return step === null || isCovered ? null : <TourStop step={step} />;
}

function TourStop({ step }: { step: number }) {
  const store = useAppStore();
  const card = useRef<HTMLElement>(null);
  const { title, text, target } = TOUR_STEPS[step] ?? { title: '', text: '', target: 'body' };
  const box = useBoxOf(target);
  const isLast = step === TOUR_STEPS.length - 1;
  const go = (to: number): void => {
    if (to >= 0 && to < TOUR_STEPS.length) store.getState().setView({ tourStep: to });
    else if (to >= TOUR_STEPS.length) endTour(store);
  };
  useTourKeys(card, step, go);
  const [place, setPlace] = useState({ left: 0, top: 0 });
  useLayoutEffect(() => {
    const size = card.current?.getBoundingClientRect();
    if (size) setPlace(cardPlace(box, size, { width: window.innerWidth, height: window.innerHeight }));
  }, [box]);
  return (
    <>
      <div className="tour-ring" style={box} aria-hidden="true" />
      <section className="tour-card" aria-label="Tour" style={place} ref={card}>
        <div aria-live="polite">
          <h2 className="heading">{title}</h2>
          <p className="tour-text">{text}</p>
        </div>
        <div className="tour-foot">
          <span className="small soft">
            {step + 1} of {TOUR_STEPS.length}
          </span>
          <span className="row">
            {isLast ? null : (
              <Button className="button button--quiet" onPress={() => endTour(store)}>
                Skip the tour
              </Button>
            )}
            {step > 0 ? (
              <Button className="button" onPress={() => go(step - 1)}>
                Back
              </Button>
            ) : null}
            <Button className="button button--primary" onPress={() => go(step + 1)}>
              {isLast ? 'Done' : 'Next'}
            </Button>
          </span>
        </div>
      </section>
    </>
  );
}

/** Where an element is in the window, kept up while the window changes. */
function useBoxOf(selector: string): Box {
  const [box, setBox] = useState<Box>({ left: 0, top: 0, width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = document.querySelector(selector);
    const measure = (): void => {
      const rect = element?.getBoundingClientRect();
      if (rect) setBox({ left: rect.left, top: rect.top, width: rect.width, height: rect.height });
    };
    measure();
    const observer = new ResizeObserver(measure);
    if (element) observer.observe(element);
    window.addEventListener('resize', measure);
    return () => {
      observer.disconnect();
      window.removeEventListener('resize', measure);
    };
  }, [selector]);
  return box;
}

/** Arrow keys and Escape, while nothing else wants them: the focus is on the card, or on nothing. */
function useTourKeys(card: { readonly current: HTMLElement | null }, step: number, go: (to: number) => void): void {
  const store = useAppStore();
  useEffect(() => {
    const handleKey = (event: KeyboardEvent): void => {
      const isHere = card.current?.contains(event.target as Node | null) || event.target === document.body;
      if (!isHere || event.defaultPrevented || focusArea(event.target) === 'overlay') return;
      if (event.key === 'Escape') endTour(store);
      else if (event.key === 'ArrowRight') go(step + 1);
      else if (event.key === 'ArrowLeft') go(step - 1);
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', handleKey);
    return () => window.removeEventListener('keydown', handleKey);
  });
}
