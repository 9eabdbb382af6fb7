import { describe, expect, it } from 'vitest';
import type { Action } from '../../../renderer/app/action.ts';
import { answersTo, chordOf, shownChord } from '../../../renderer/app/keys.ts';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {}) =>
  chordOf({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held });

const action = (keys: string[], where: Action['where']): Action => ({
  id: 'x',
  name: 'X',
  group: 'Edit',
  keys,
  where,
  isEnabled: () => true,
  perform: () => {},
});

describe('chords', () => {
  it('names what is held in one order, Command like Ctrl', () => {
    expect(press('z', { ctrlKey: true })).toBe('Mod+Z');
    expect(press('Z', { metaKey: true, shiftKey: true })).toBe('Mod+Shift+Z');
    expect(press('ArrowLeft', { altKey: true, shiftKey: true })).toBe('Alt+Shift+ArrowLeft');
  });

  it('takes plus with or without Shift, and from the key beside it', () => {
    expect(press('+', { shiftKey: true })).toBe('Plus');
    expect(press('+')).toBe('Plus');
    expect(press('=')).toBe('Plus');
    expect(press('-')).toBe('Minus');
  });

  it('prints arrows as arrows', () => {
    expect(shownChord('Alt+ArrowUp')).toBe('Alt+↑');
  });
});

describe('who answers', () => {
  it('leaves a text field its own undo and copy, and letters', () => {
    expect(answersTo(action(['Mod+Z'], 'anywhere'), 'Mod+Z', 'text')).toBe(false);
    expect(answersTo(action(['Mod+S'], 'anywhere'), 'Mod+S', 'text')).toBe(true);
    expect(answersTo(action(['C'], 'drawing'), 'C', 'text')).toBe(false);
    expect(answersTo(action(['Escape'], 'anywhere'), 'Escape', 'text')).toBe(false);
  });

  it('gives bare letters to the drawing and the outline only', () => {
    const connect = action(['C'], 'drawing');
    expect(answersTo(connect, 'C', 'drawing')).toBe(true);
    expect(answersTo(connect, 'C', 'outline')).toBe(true);
    expect(answersTo(connect, 'C', 'elsewhere')).toBe(false);
  });

  it('lets plain arrows walk the outline and moves with Alt there', () => {
    const up = action(['ArrowUp', 'Alt+ArrowUp'], 'drawing');
    expect(answersTo(up, 'ArrowUp', 'drawing')).toBe(true);
    expect(answersTo(up, 'ArrowUp', 'outline')).toBe(false);
    expect(answersTo(action(['Shift+ArrowUp'], 'drawing'), 'Shift+ArrowUp', 'outline')).toBe(false);
    expect(answersTo(up, 'Alt+ArrowUp', 'outline')).toBe(true);
  });

  it('says nothing while a menu or dialog is open', () => {
    expect(answersTo(action(['Mod+S'], 'anywhere'), 'Mod+S', 'overlay')).toBe(false);
  });
});
