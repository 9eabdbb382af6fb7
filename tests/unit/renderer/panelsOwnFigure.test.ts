import { describe, expect, it } from 'vitest';
import { figure } from '../../../core/model/figure.ts';
import { withOwnValue } from '../../../renderer/dialogs/ownFigure.ts';

const generic = figure(25, 5, 'standard', 'a standard');

describe('a figure of one’s own part', () => {
  it('does not keep the generic part’s source under another value', () => {
    expect(withOwnValue(generic, generic, 20)).toEqual(figure(20, 5, 'assumed', 'entered by hand'));
    expect(withOwnValue(generic, generic, 25)).toEqual(generic);
  });

  it('keeps what the user said of it', () => {
    const said = figure(22, 5, 'data-sheet', 'maker’s data sheet');
    expect(withOwnValue(said, generic, 20)).toEqual({ ...said, value: 20 });
    expect(withOwnValue(generic, undefined, 20)).toEqual({ ...generic, value: 20 });
  });
});
