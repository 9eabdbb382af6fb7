import type { Band, ConnectorType, Part, Port, RfPort } from './part.ts';

/** One end of a joint to be made: a port, the part it is on, and (where known) the item and its tag for the sentence. */
export interface FitEnd {
  readonly part: Part;
  readonly port: Port;
  readonly itemId?: string;
  readonly tag?: string;
}

/** Whether two ports go together; a refusal has a reason, a fit may have a caution. Both are whole sentences. */
export type Fit =
  | { readonly fits: true; readonly caution?: string }
  | { readonly fits: false; readonly reason: string };

const MEDIUM_WORDS: Readonly<Record<Port['medium'], string>> = {
  rf: 'an antenna socket',
  dc: 'a DC supply terminal',
  data: 'a data port',
};

const BAND_WORDS: Readonly<Record<Band, string>> = {
  'mf-hf': 'an MF/HF',
  navtex: 'a Navtex',
  broadcast: 'a broadcast',
  'vhf-marine': 'a marine VHF',
  'beacon-406': 'a 406 MHz',
  cellular: 'a cellular',
  gnss: 'a GNSS',
  'l-band': 'an L-band',
  wifi: 'a Wi-Fi',
  radar: 'a radar',
  'satellite-broadband': 'a satellite broadband',
};

/** What the trade calls each connector. */
export const CONNECTOR_WORDS: Readonly<Record<ConnectorType, string>> = {
  uhf: 'UHF (PL-259)',
  n: 'N',
  bnc: 'BNC',
  tnc: 'TNC',
  sma: 'SMA',
  fme: 'FME',
  f: 'F',
  'din-41585': 'DIN 41585',
  terminal: 'screw terminal',
  captive: 'captive lead',
};

/**
 * Whether a run, feed or link may join these two ports. Knows only the two ends; what is already connected and loops are
 * the business of `canConnect`.
 */
export function portFit(a: FitEnd, b: FitEnd): Fit {
  if (a.itemId !== undefined && a.itemId === b.itemId) {
    return no(`Both ends are on ${nameOf(a)}: pick a port on another item.`);
  }
  if (a.port.medium !== b.port.medium) {
    return no(
      `${MEDIUM_WORDS[a.port.medium]} (${nameOf(a)}) does not go to ${MEDIUM_WORDS[b.port.medium]} (${nameOf(b)}): ` +
        'coax joins antenna sockets, a feed joins DC terminals, a link joins data ports.',
    );
  }
  if (a.port.medium === 'rf' && b.port.medium === 'rf') {
    return rfFit({ ...a, port: a.port }, { ...b, port: b.port });
  }
  if (a.port.medium === 'dc' && b.port.medium === 'dc') return dcFit(a, b, a.port.role, b.port.role);
  return { fits: true };
}

type RfEnd = FitEnd & { readonly port: RfPort };

function rfFit(a: RfEnd, b: RfEnd): Fit {
  if (isSet(a.part) && isSet(b.part)) {
    return no(
      `${nameOf(a)} and ${nameOf(b)} are both radios: a radio's socket goes towards an antenna, not to a radio.`,
    );
  }
  if (a.part.kind === 'antenna' && b.part.kind === 'antenna') {
    return no(`${nameOf(a)} and ${nameOf(b)} are both antennas: lead one of them to a radio or a splitter instead.`);
  }
  if (!a.port.bands.some((band) => b.port.bands.includes(band))) {
    return no(`${bandName(a)} does not fit ${bandName(b)}: no band in common.`);
  }
  const cautions = [impedanceCaution(a, b), ratingCaution(a, b), ratingCaution(b, a), connectorCaution(a, b)].filter(
    (caution) => caution !== null,
  );
  return cautions.length === 0 ? { fits: true } : { fits: true, caution: cautions.join(' ') };
}

function dcFit(a: FitEnd, b: FitEnd, roleA: 'in' | 'out', roleB: 'in' | 'out'): Fit {
  if (roleA !== roleB) return { fits: true };
  return roleA === 'in'
    ? no(`${nameOf(a)} and ${nameOf(b)} both take current: a feed starts at a battery, panel, breaker or fuse.`)
    : no(`${nameOf(a)} and ${nameOf(b)} both give current: a feed ends at the supply terminals of a load.`);
}

function impedanceCaution(a: RfEnd, b: RfEnd): string | null {
  const low = Math.min(a.port.impedanceOhm, b.port.impedanceOhm);
  const high = Math.max(a.port.impedanceOhm, b.port.impedanceOhm);
  if (low === high) return null;
  // A step between two resistances has VSWR equal to their ratio.
  return `${high} ohm onto ${low} ohm: the step alone is a VSWR of ${(high / low).toFixed(1)}.`;
}

function ratingCaution(device: RfEnd, set: RfEnd): string | null {
  if (device.part.kind !== 'inline' || set.part.kind !== 'radio') return null;
  const watts = set.part.figures.txPowerW.value;
  if (watts <= 0) return null;
  const ways = device.part.throughs.filter((way) => [way.fromPortId, way.toPortId].includes(device.port.id));
  if (device.part.traits.transmitRated && ways.some((way) => way.transmit)) return null;
  return `${nameOf(device)} is not made to be transmitted through here, and ${nameOf(set)} puts ${watts} W into it.`;
}

function connectorCaution(a: RfEnd, b: RfEnd): string | null {
  const [first, second] = [a.port.connector, b.port.connector];
  const isPlain = [first, second].every((type) => type !== 'captive' && type !== 'terminal');
  if (first === second || !isPlain) return null;
  return (
    `The ends differ, ${CONNECTOR_WORDS[first]} at ${nameOf(a)} and ${CONNECTOR_WORDS[second]} at ${nameOf(b)}: ` +
    'make the run up with a plug for each, or use an adapter.'
  );
}

/** A set with a receiver, which belongs at one end of a feeder. */
const isSet = (part: Part): boolean => part.kind === 'radio' || part.kind === 'position-source';
const nameOf = (end: FitEnd): string => end.tag ?? end.part.name;
const no = (reason: string): Fit => ({ fits: false, reason: reason.charAt(0).toUpperCase() + reason.slice(1) });

function bandName(end: RfEnd): string {
  const noun = end.part.kind === 'antenna' ? 'antenna' : 'socket';
  const [first] = end.port.bands;
  const words = first === undefined ? 'an' : BAND_WORDS[first];
  return end.tag === undefined ? `${words} ${noun}` : `${words} ${noun} (${end.tag})`;
}
