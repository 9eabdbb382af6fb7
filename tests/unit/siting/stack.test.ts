import { describe, expect, it } from 'vitest';
import { ANTENNAS } from '../../../core/catalogue/antennas.ts';
import { figure } from '../../../core/model/figure.ts';
import type { PartOf } from '../../../core/model/part.ts';
import { stackOf } from '../../../core/siting/stack.ts';

function part(id: string): PartOf<'antenna'> {
  const found = ANTENNAS.find((each) => each.id === id);
  if (!found) throw new Error(`No ${id}`);
  return found;
}

/** The same antenna with other figures; elements and pitch not stated where they are not given. */
function withStack(id: string, elements?: number, pitch?: number): PartOf<'antenna'> {
  const { elements: _e, pitchWavelengths: _p, ...figures } = part(id).figures;
  const f = (value: number) => figure(value, 0, 'assumed', 'test');
  return {
    ...part(id),
    figures: {
      ...figures,
      ...(elements === undefined ? {} : { elements: f(elements) }),
      ...(pitch === undefined ? {} : { pitchWavelengths: f(pitch) }),
    },
  };
}

describe('stackOf', () => {
  it.each([
    ['antenna-vhf-whip-3db', 1],
    ['antenna-ais-whip-1m2', 1],
    ['antenna-vhf-collinear-6db', 2],
    ['antenna-vhf-collinear-9db', 4],
    ['antenna-vhf-quarter-wave', 1],
  ])('%s has %d half waves, by its figures and by its length alone', (id, elements) => {
    expect(stackOf(part(id), 156.8).elements).toBe(elements);
    expect(stackOf(withStack(id), 156.8).elements).toBe(elements);
  });

  it('takes a pitch as stated, and does not take a number of half waves that cannot be', () => {
    expect(stackOf(withStack('antenna-vhf-collinear-6db', 2, 0.6), 156.8).pitchWavelengths).toBe(0.6);
    expect(stackOf(withStack('antenna-vhf-collinear-6db', 2, 3), 156.8).pitchWavelengths).toBe(0.75);
    expect(stackOf(withStack('antenna-vhf-collinear-6db', 2.5), 156.8).elements).toBe(2);
    expect(stackOf(withStack('antenna-vhf-collinear-6db', 0), 156.8).elements).toBe(2);
    expect(stackOf(withStack('antenna-vhf-collinear-6db', 40), 156.8).elements).toBe(2);
  });

  it('refuses a frequency that is none', () => {
    expect(() => stackOf(part('antenna-vhf-whip-3db'), 0)).toThrow(RangeError);
    expect(() => stackOf(part('antenna-vhf-whip-3db'), Number.NaN)).toThrow(RangeError);
  });
});
