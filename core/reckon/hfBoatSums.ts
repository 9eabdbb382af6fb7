import { VOICE_CHANNELS } from '../reach/hfBands.ts';
import { skyDay } from '../reach/hfDay.ts';
import { type BaseFedWire, conductorLossOhm, insulatorPeakV, shortAntenna } from '../rf/shortAntenna.ts';
import { number } from './parameters.ts';
import type { Answer, Given, Parameter, Sum } from './types.ts';

const answer = (key: string, label: string, value: number, unit: string, digits: number): Answer => ({
  key,
  label,
  value,
  unit,
  digits,
});

const usually = (parameter: Parameter, fallback: number): Parameter => ({ ...parameter, fallback });

const hfAntennaSum: Sum = {
  id: 'hf-antenna',
  title: 'A wire or whip fed at its foot by a tuner: impedance, efficiency and volts',
  parameters: [
    number('mhz', 'frequency', 'MHz', 0.1, 30, '4.125'),
    number('m', 'length of the conductor, lead-in included', 'm', 0.1, 200, '10'),
    usually(number('slope', 'slope above the water', '°', 0, 90, '70'), 90),
    usually(number('radius', 'radius of the conductor', 'mm', 0.1, 100, '3'), 3),
    usually(number('ground', 'loss of earth, joints and hull', 'ohm', 0, 10_000, '10'), 10),
    usually(number('q', 'quality of the tuner’s coil', '', 10, 100_000, '200'), 200),
    usually(number('watts', 'peak power at the foot', 'W', 0.001, 10_000, '150'), 150),
    usually(
      number('sigma', 'conductivity of the conductor; copper 58, stainless 1.35', 'MS/m', 0.001, 1000, '1.35'),
      1.35,
    ),
  ],
  source:
    'sinusoidal current and a fit to a wire-grid solver, to 0.35 wavelengths over a perfect ground; the loss of the conductor is told apart and not in the efficiency',
  reckon: (given) => hfAntennaAnswers(given),
};

function hfAntennaAnswers(given: Given): readonly Answer[] {
  const groundLossOhm = given.number('ground');
  const wire: BaseFedWire = {
    lengthM: given.number('m'),
    verticalShare: Math.sin((given.number('slope') * Math.PI) / 180),
    radiusMm: given.number('radius'),
    frequencyMhz: given.number('mhz'),
  };
  const antenna = shortAntenna(wire, { groundLossOhm, coilQ: given.number('q') });
  const watts = given.number('watts');
  return [
    answer('radiationOhm', 'radiation resistance', antenna.radiationOhm, 'ohm', 2),
    answer('reactanceOhm', 'reactance', antenna.reactanceOhm, 'ohm', 0),
    answer('coilOhm', 'loss of the coil', antenna.coilOhm, 'ohm', 2),
    answer('conductorOhm', 'loss of the conductor', conductorLossOhm(wire, given.number('sigma')), 'ohm', 2),
    answer('efficiencyPercent', 'of the power is radiated', 100 * antenna.efficiency, '%', 1),
    answer('radiatedW', 'power radiated', watts * antenna.efficiency, 'W', 1),
    answer('peakV', 'peak voltage at the foot', insulatorPeakV(antenna, groundLossOhm, watts), 'V', 0),
  ];
}

const hfDaySum: Sum = {
  id: 'hf-day',
  title: 'What the sky carries to a distance in one hour of the day, and the marine band to try first',
  parameters: [
    number('d', 'distance over ground', 'km', 50, 8000, '1500'),
    number('hour', 'local solar time, whole hours', 'h', 0, 23, '14'),
    usually(number('day', 'foF2 at its highest of the day', 'MHz', 0.5, 25, '8'), 8),
    usually(number('night', 'foF2 at its lowest of the night', 'MHz', 0.5, 25, '4'), 4),
    usually(number('m3000', 'M(3000)F2 factor', '', 2, 4, '3'), 3),
    usually(number('lat', 'latitude, south below 0', '°', -90, 90, '45'), 45),
    usually(number('month', 'month, 1 to 12', '', 1, 12, '7'), 7),
    usually(number('ssn', 'sunspot number, twelve-month mean', '', 0, 300, '80'), 80),
  ],
  source:
    'ITU-R P.533, P.1240 and P.1239; foF2 between the two figures follows the sun by a law of our own; no level, no absorption, no ground wave',
  reckon: (given) => hfDayAnswers(given),
};

function hfDayAnswers(given: Given): readonly Answer[] {
  const hour = whole(given, 'hour');
  const conditions = {
    noise: 'rural',
    lightning: 'none',
    foF2DayMhz: given.number('day'),
    foF2NightMhz: given.number('night'),
    m3000: given.number('m3000'),
    latitudeDeg: given.number('lat'),
    month: whole(given, 'month'),
    sunspotNumber: given.number('ssn'),
  } as const;
  const bands = VOICE_CHANNELS.map(({ id, frequencyMhz }) => ({ id, frequencyMhz, groundWave: [] }));
  const day = skyDay(conditions, bands, given.number('d'));
  const best = day.cells.find((cell) => cell.hour === hour && cell.isBest);
  const bestMhz = VOICE_CHANNELS.find(({ id }) => id === best?.bandId)?.frequencyMhz;
  return day.hours
    .filter((sky) => sky.hour === hour)
    .flatMap((sky) => [
      answer('hops', 'hops', day.hops, '', 0),
      answer('takeoffDeg', 'take-off angle', sky.takeoffDeg, '°', 1),
      answer('sunZenithDeg', 'angle of the sun from straight up', sky.sunZenithDeg, '°', 1),
      answer('foF2Mhz', 'critical frequency of the F2 layer', sky.foF2Mhz, 'MHz', 2),
      answer('foEMhz', 'critical frequency of the E layer', sky.foEMhz, 'MHz', 2),
      answer('mufMhz', 'highest frequency, median', sky.mufMhz, 'MHz', 2),
      answer('workingMhz', 'working frequency, most days', sky.workingMhz, 'MHz', 2),
      // With every marine band shut or screened there is none to try.
      ...(bestMhz === undefined ? [] : [answer('bestMhz', 'marine voice channel to try first', bestMhz, 'MHz', 3)]),
    ]);
}

function whole(given: Given, key: string): number {
  const value = given.number(key);
  if (!Number.isInteger(value)) throw new RangeError(`${key}=${value} must be a whole number.`);
  return value;
}

export const HF_BOAT_SUMS: readonly Sum[] = [hfAntennaSum, hfDaySum];
