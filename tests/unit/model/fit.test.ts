import { describe, expect, it } from 'vitest';
import { type FitEnd, portFit } from '../../../core/model/fit.ts';
import type { Part, Port } from '../../../core/model/part.ts';
import { AIS, BANK, BREAKER, GNSS_ANTENNA, RX_SPLITTER, SPLITTER, VHF, WHIP } from '../document/boat.ts';

function at(part: Part, portId: string, itemId?: string): FitEnd {
  const port = part.ports.find((candidate) => candidate.id === portId);
  if (!port) throw new Error(`no port ${portId}`);
  return itemId === undefined ? { part, port } : { part, port, itemId };
}

const refused = (a: FitEnd, b: FitEnd) => {
  const [there, back] = [portFit(a, b), portFit(b, a)];
  expect(back.fits).toBe(there.fits);
  return there.fits ? '' : there.reason;
};

describe('portFit', () => {
  it('takes an antenna into a socket of its band, data to data, a source to a load', () => {
    expect(portFit(at(WHIP, 'feed'), at(VHF, 'ant'))).toEqual({ fits: true });
    expect(portFit(at(AIS, 'nmea'), at(VHF, 'nmea'))).toEqual({ fits: true });
    expect(portFit(at(BANK, 'out'), at(VHF, 'dc'))).toEqual({ fits: true });
    expect(portFit(at(VHF, 'dc'), at(BREAKER, 'out'))).toEqual({ fits: true });
  });

  it('refuses no band in common', () => {
    expect(refused(at(GNSS_ANTENNA, 'feed'), at(VHF, 'ant'))).toBe(
      'A GNSS antenna does not fit a marine VHF socket: no band in common.',
    );
  });

  it('refuses different media', () => {
    expect(refused(at(WHIP, 'feed'), at(VHF, 'dc'))).toBe(
      'An antenna socket (Test VHF whip) does not go to a DC supply terminal (Test VHF set): coax joins antenna sockets, a feed joins DC terminals, a link joins data ports.',
    );
  });

  it('refuses the same item', () => {
    expect(refused(at(AIS, 'ant', 'i1'), at(AIS, 'gnss', 'i1'))).toBe(
      'Both ends are on Test AIS set: pick a port on another item.',
    );
  });

  it('refuses radio to radio and antenna to antenna', () => {
    expect(refused(at(VHF, 'ant', 'a'), at(AIS, 'ant', 'b'))).toBe(
      "Test VHF set and Test AIS set are both radios: a radio's socket goes towards an antenna, not to a radio.",
    );
    expect(refused(at(WHIP, 'feed', 'a'), at(WHIP, 'feed', 'b'))).toBe(
      'Test VHF whip and Test VHF whip are both antennas: lead one of them to a radio or a splitter instead.',
    );
  });

  it('refuses supply to supply and load to load', () => {
    expect(refused(at(BANK, 'out'), at(BREAKER, 'out'))).toBe(
      'Test bank and Test breaker both give current: a feed ends at the supply terminals of a load.',
    );
    expect(refused(at(VHF, 'dc'), at(AIS, 'dc'))).toBe(
      'Test VHF set and Test AIS set both take current: a feed starts at a battery, panel, breaker or fuse.',
    );
  });

  it('cautions about 75 ohm, plugs that differ and a receive-only splitter', () => {
    const socket = VHF.ports[0] as Extract<Port, { medium: 'rf' }>;
    const tv: Part = { ...WHIP, ports: [{ ...socket, id: 'feed', impedanceOhm: 75 }] };
    expect(portFit(at(tv, 'feed'), at(VHF, 'ant'))).toEqual({
      fits: true,
      caution: '75 ohm onto 50 ohm: the step alone is a VSWR of 1.5.',
    });
    expect(portFit(at(WHIP, 'feed'), at(AIS, 'ant'))).toEqual({
      fits: true,
      caution:
        'The ends differ, UHF (PL-259) at Test VHF whip and BNC at Test AIS set: make the run up with a plug for each, or use an adapter.',
    });
    expect(portFit(at(RX_SPLITTER, 'out1'), at(VHF, 'ant'))).toEqual({
      fits: true,
      caution: 'Test receive splitter is not made to be transmitted through here, and Test VHF set puts 25 W into it.',
    });
    expect(portFit(at(SPLITTER, 'vhf'), at(VHF, 'ant'))).toEqual({ fits: true });
  });
});
