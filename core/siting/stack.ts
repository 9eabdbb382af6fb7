import type { PartOf } from '../model/part.ts';
import type { CollinearAntenna } from '../rf/pattern.ts';
import { SPEED_OF_LIGHT_M_PER_S } from '../units/constants.ts';

/** Usual distance of the middles of half waves above each other, wavelengths; common practice, no source. */
const USUAL_PITCH = 0.75;
const MOST_ELEMENTS = 16;

/**
 * Half waves an upright antenna is made of: as its figures state, else as many as its length holds at the usual pitch, one at
 * least. A stated number or pitch that no such antenna has counts as not stated; a finding tells of it.
 * @throws RangeError when the frequency is not above 0
 */
export function stackOf(part: PartOf<'antenna'>, frequencyMhz: number): CollinearAntenna {
  if (!(frequencyMhz > 0 && Number.isFinite(frequencyMhz)))
    throw new RangeError(`frequencyMhz must be above 0, not ${frequencyMhz}.`);
  const { elements, pitchWavelengths, lengthM } = part.figures;
  const pitch = pitchWavelengths?.value ?? USUAL_PITCH;
  const isPitch = pitch >= 0.5 && pitch <= 1;
  const stated = elements?.value ?? Number.NaN;
  if (Number.isInteger(stated) && stated >= 1 && stated <= MOST_ELEMENTS)
    return { elements: stated, pitchWavelengths: isPitch ? pitch : USUAL_PITCH };
  const wavelengths = (lengthM.value * frequencyMhz * 1e6) / SPEED_OF_LIGHT_M_PER_S;
  const held = Math.round((wavelengths - 0.5) / USUAL_PITCH) + 1;
  return { elements: Math.min(MOST_ELEMENTS, Math.max(1, held || 1)), pitchWavelengths: USUAL_PITCH };
}
