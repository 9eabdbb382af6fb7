import { indexProject } from '../catalogue/lookup.ts';
import type { Band, PartOf, Port, RfPort } from '../model/part.ts';
import type { Project } from '../model/project.ts';
import { RefusedEdit } from './refused.ts';

/** A frequency inside each band by which cables are compared, MHz. */
const BAND_MHZ: Readonly<Record<Band, number>> = {
  'mf-hf': 16,
  navtex: 0.518,
  broadcast: 100,
  'vhf-marine': 160,
  'beacon-406': 406,
  cellular: 1800,
  gnss: 1575,
  'l-band': 1621,
  wifi: 2400,
  radar: 9400,
  'satellite-broadband': 1600,
};

/** Thickness that is usual for a band, mm: thin where runs are short or the antenna has an amplifier. Common practice. */
const THIN_BANDS: readonly Band[] = ['gnss', 'cellular', 'wifi', 'broadcast', 'navtex'];
const THIN_MM = 7;
const THICK_MM = 11;

/**
 * The cable a new run starts with: right impedance, good at the band's frequency, no thicker than is usual for the band,
 * and of those the one that loses least.
 * @throws RefusedEdit when there is no coax to choose from
 */
export function defaultCableId(project: Project, from: RfPort, to: RfPort): string {
  const band = from.bands.find((candidate) => to.bands.includes(candidate)) ?? from.bands[0] ?? 'vhf-marine';
  const frequencyMhz = BAND_MHZ[band];
  const mostMm = THIN_BANDS.includes(band) ? THIN_MM : THICK_MM;
  const cables = partsOfKind(project, 'coax');
  const penalty = (cable: PartOf<'coax'>): number => {
    const { impedanceOhm, maxFrequencyMhz, outsideDiameterMm, lossK1, lossK2 } = cable.figures;
    // A line without loss of its own is a bare lead-in wire: right between screw terminals, wrong everywhere else.
    const isLeadIn = lossK1.value === 0 && lossK2.value === 0;
    const isWrongKind = isLeadIn !== (from.connector === 'terminal' && to.connector === 'terminal');
    const isWrongOhm = ![from.impedanceOhm, to.impedanceOhm].includes(impedanceOhm.value);
    const isTooSlow = maxFrequencyMhz.value < frequencyMhz;
    const isTooThick = outsideDiameterMm.value > mostMm;
    const lossDbPer100M = lossK1.value * Math.sqrt(frequencyMhz) + lossK2.value * frequencyMhz;
    return (
      (isWrongKind ? 8e6 : 0) + (isWrongOhm ? 4e6 : 0) + (isTooSlow ? 2e6 : 0) + (isTooThick ? 1e6 : 0) + lossDbPer100M
    );
  };
  const best = lowest(cables, penalty);
  if (!best) throw new RefusedEdit('There is no coax to make a run of: add a cable to the parts of your own first.');
  return best.id;
}

/** The plug that fits a port, or null for a captive lead or where no such connector is known. */
export function defaultConnectorId(project: Project, port: Port | undefined): string | null {
  if (port?.medium !== 'rf' || port.connector === 'captive') return null;
  return partsOfKind(project, 'connector').find((part) => part.connectorType === port.connector)?.id ?? null;
}

/** The conductor a new feed starts with: the thinnest of at least 2.5 mm² (common practice for a 25 W set). */
export function defaultConductorId(project: Project): string {
  const conductors = partsOfKind(project, 'conductor');
  const best = lowest(conductors, (part) => {
    const areaMm2 = part.figures.areaMm2.value;
    return areaMm2 >= 2.5 ? areaMm2 : 1e6 - areaMm2;
  });
  if (!best) throw new RefusedEdit('There is no conductor to make a feed of: add one to the parts of your own first.');
  return best.id;
}

/** A part of the wanted kind by id. @throws RefusedEdit saying what it is instead */
export function requireKind(project: Project, partId: string, kind: 'coax' | 'connector' | 'conductor'): void {
  const part = indexProject(project).parts.get(partId);
  if (!part) throw new RefusedEdit(`There is no part "${partId}": choose one from the list.`);
  if (part.kind === kind) return;
  const words = { coax: 'a cable', connector: 'a connector', conductor: 'a DC conductor' }[kind];
  throw new RefusedEdit(`${part.name} is not ${words}: choose ${words} from the list.`);
}

function partsOfKind<K extends 'coax' | 'connector' | 'conductor'>(project: Project, kind: K): PartOf<K>[] {
  return [...indexProject(project).parts.values()].filter((part): part is PartOf<K> => part.kind === kind);
}

function lowest<T>(list: readonly T[], score: (entry: T) => number): T | undefined {
  let best: T | undefined;
  let bestScore = Number.POSITIVE_INFINITY;
  for (const entry of list) {
    const own = score(entry);
    if (own >= bestScore) continue;
    best = entry;
    bestScore = own;
  }
  return best;
}
