import { describe, expect, it } from 'vitest';
import { loadLicences, matchingLicences } from '../../../renderer/dialogs/licences.ts';
import { questionWords } from '../../../renderer/dialogs/questionWords.ts';
import { ask, type Question } from '../../../renderer/store/questions.ts';
import { whenSaid } from '../../../renderer/ui/when.ts';
import { dropPromise, dropRefusal } from '../../../renderer/welcome/drop.ts';
import { cardPlace } from '../../../renderer/welcome/tourSteps.ts';
import { freshStore } from './filesFixture.ts';

const CHANGED: Question = {
  kind: 'changed-on-disk',
  name: 'boat.backstay',
  modifiedAt: '2026-05-03T12:00:00Z',
  seenAt: '',
};

describe('questions', () => {
  it('waits for the answer, and is gone once it has it', async () => {
    const store = freshStore();
    const answer = ask(store, { kind: 'unsaved', title: 'Tern' });
    expect(store.getState().question?.question).toEqual({ kind: 'unsaved', title: 'Tern' });
    store.getState().question?.answer('discard');
    expect(await answer).toBe('discard');
    expect(store.getState().question).toBeNull();
  });

  it('does nothing on a second question while one is open', async () => {
    const store = freshStore();
    const first = ask(store, { kind: 'unsaved', title: 'Tern' });
    expect(await ask(store, CHANGED)).toBe('cancel');
    store.getState().question?.answer('save');
    expect(await first).toBe('save');
  });

  it('offers a way back in every question, and never makes a loss the button that Enter presses', () => {
    const questions: Question[] = [
      { kind: 'unsaved', title: 'Tern' },
      CHANGED,
      { kind: 'save-failed', name: 'boat.backstay', reason: 'The disk is full.' },
    ];
    for (const question of questions) {
      const { choices } = questionWords(question, () => '');
      expect(choices.map(({ id }) => id)).toContain('cancel');
      expect(choices.at(-1)?.loses).toBeUndefined();
    }
  });

  it('says the times that are known and no others', () => {
    const { sentences } = questionWords(CHANGED, (instant) => (instant === '' ? '' : `at ${instant}`));
    expect(sentences[0]).toBe('On the disk it was changed at 2026-05-03T12:00:00Z.');
    expect(sentences.join(' ')).not.toContain('last read');
  });

  it('says once that the work is still open', () => {
    for (const reason of ['The disk is full.', 'The disk is full. Your work is still open here.']) {
      const { sentences } = questionWords({ kind: 'save-failed', name: '', reason }, () => '');
      expect(sentences.join(' ').match(/still open here/g)).toHaveLength(1);
    }
  });

  it('tells today from other days, and nothing of what is no instant', () => {
    const now = new Date(2026, 4, 3, 15, 0);
    expect(whenSaid(new Date(2026, 4, 3, 14, 5).toISOString(), now)).toBe('today at 14:05');
    expect(whenSaid(new Date(2026, 4, 1, 9, 30).toISOString(), now)).toMatch(/^on 1 May 2026 at 09:30$/);
    expect(whenSaid('', now)).toBe('');
  });
});

describe('files dropped on the window', () => {
  it('takes one document, whatever the case of its ending', () => {
    expect(dropRefusal(['Boat.BACKSTAY'])).toBeNull();
    expect(dropRefusal(['photo.png'])).toContain('photo.png is not a Backstay document');
    expect(dropRefusal(['a.backstay', 'b.backstay'])).toContain('one document at a time');
    expect(dropRefusal([])).toContain('.backstay');
  });

  it('says beforehand what will happen', () => {
    expect(dropPromise({ count: 1, isBusy: false, isUnsaved: true }).text).toContain(
      'asked about your unsaved changes',
    );
    expect(dropPromise({ count: 1, isBusy: false, isUnsaved: false })).toMatchObject({ takes: true });
    expect(dropPromise({ count: 2, isBusy: false, isUnsaved: false }).takes).toBe(false);
    expect(dropPromise({ count: 1, isBusy: true, isUnsaved: false }).takes).toBe(false);
  });
});

describe('the tour’s card', () => {
  const window = { width: 1280, height: 800 };
  const card = { width: 368, height: 160 };
  const boxes = {
    'the bar': { left: 0, top: 0, width: 240, height: 42 },
    'the left column': { left: 0, top: 42, width: 264, height: 726 },
    'the drawing': { left: 264, top: 42, width: 560, height: 726 },
    'the right column': { left: 824, top: 42, width: 456, height: 726 },
    'the foot': { left: 1160, top: 768, width: 120, height: 32 },
    'the whole window': { left: 0, top: 0, width: 1280, height: 800 },
  };
  for (const [name, box] of Object.entries(boxes)) {
    it(`stays in the window beside ${name}`, () => {
      const { left, top } = cardPlace(box, card, window);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(top).toBeGreaterThanOrEqual(0);
      expect(left + card.width).toBeLessThanOrEqual(window.width);
      expect(top + card.height).toBeLessThanOrEqual(window.height);
      if (name === 'the whole window') return;
      const isClear =
        left >= box.left + box.width ||
        left + card.width <= box.left ||
        top >= box.top + box.height ||
        top + card.height <= box.top;
      expect(isClear, 'it covers what it points at').toBe(true);
    });
  }
});

describe('licences', () => {
  const list = [
    { name: 'react', version: '1', licence: 'MIT', text: 'terms' },
    { name: 'some-font', version: '2', licence: 'OFL-1.1', text: 'terms' },
  ];
  const answer = (ok: boolean, value: unknown) => async () => ({ ok, json: async () => value });

  it('reads the list that the build makes', async () => {
    expect(await loadLicences(answer(true, list))).toEqual(list);
    expect(matchingLicences(list, 'mit')).toEqual([list[0]]);
    expect(matchingLicences(list, 'font ofl')).toEqual([list[1]]);
  });

  it('says so in a sentence when there is none, or something else in its place', async () => {
    const failing = async (): Promise<never> => {
      throw new Error('no such file');
    };
    for (const get of [failing, answer(false, null), answer(true, [{ name: 1 }])]) {
      expect(await loadLicences(get)).toContain('not in this build');
    }
  });
});
