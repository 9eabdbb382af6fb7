import { foEMhz } from '../../../core/propagation/eLayer.ts';
import { faddeeva } from '../../../core/propagation/faddeeva.ts';
import { freeSpaceLossDb } from '../../../core/propagation/freeSpace.ts';
import * as groundWave from '../../../core/propagation/groundWave.ts';
import { horizonKm } from '../../../core/propagation/horizon.ts';
import { reachKm, reachSolver } from '../../../core/propagation/reach.ts';
import * as satellite from '../../../core/propagation/satellite.ts';
import * as skyWave from '../../../core/propagation/skyWave.ts';
import { seaPathLossDb, sphericalEarthLoss } from '../../../core/propagation/sphericalEarth.ts';
import * as sun from '../../../core/propagation/sun.ts';
import { seaMedianLoss, troposcatterPathLossDb } from '../../../core/propagation/troposcatter.ts';
import { twoRay, twoRayPathLossDb } from '../../../core/propagation/twoRay.ts';
import { effectiveDistanceKm, timeVariabilityDb } from '../../../core/propagation/variability.ts';
import { type Sum, sum } from './sum.ts';

const PATH = { frequencyMhz: 156.8, distanceKm: 3, h1M: 20, h2M: 10 };
const SEA = { ...PATH, effectiveRadiusKm: 8500 };
const ROUGH = { ...PATH, roughnessM: 0.3 };
const WAVE = { frequencyMhz: 2.182, distanceKm: 100, surfaceRefractivity: 315, permittivity: 70, conductivitySPerM: 5 };
const RECEIVER = { antennaGainDbi: 3, lineLossDb: 2, receiverNoiseFigureDb: 2, antennaTemperatureK: 130 };
const IONOSPHERE = { foF2Mhz: 8, foEMhz: 3, m3000: 3, gyrofrequencyMhz: 1.2 };
const PLACE = { latitudeDeg: 45, declinationDeg: 10 };

const wave = ({ permittivity, conductivitySPerM, ...path }: Readonly<typeof WAVE>): groundWave.GroundWavePath => ({
  ...path,
  ground: { permittivity, conductivitySPerM },
});

export const PROPAGATION_SUMS: readonly Sum[] = [
  sum('foEMhz', { ...PLACE, zenithDeg: 40, sunspotNumber: 80, hoursAfterSunset: 1 }, foEMhz),
  sum('faddeeva', { re: 1, im: 0.5 }, faddeeva),
  sum('freeSpaceLossDb', { frequencyMhz: 156.8, distanceKm: 10 }, (v) => freeSpaceLossDb(v.frequencyMhz, v.distanceKm)),
  sum('groundWaveAttenuation', WAVE, (v) => groundWave.groundWaveAttenuation(wave(v))),
  sum('groundWaveLossDb', WAVE, (v) => groundWave.groundWaveLossDb(wave(v))),
  sum('groundWaveCurve', WAVE, (v) => groundWave.groundWaveCurve(wave(v))(v.distanceKm)),
  sum('groundWaveFieldDbuvPerM', { ...WAVE, radiatedW: 100 }, ({ radiatedW, ...v }) =>
    groundWave.groundWaveFieldDbuvPerM(wave(v), radiatedW),
  ),
  sum('horizonKm', { h1M: 20, h2M: 4 }, (v) => horizonKm('four-thirds-earth', v.h1M, v.h2M)),
  sum('reachKm', { frequencyMhz: 156.8, h1M: 20, h2M: 10, limitDb: 140 }, (v) => reachKm(v, v.limitDb)),
  sum('reachSolver', { frequencyMhz: 156.8, h1M: 20, h2M: 10, limitDb: 140 }, (v) => reachSolver(v)(v.limitDb)),
  sum('satelliteSight', { heightKm: 780, elevationDeg: 30 }, (v) =>
    satellite.satelliteSight(v.heightKm, v.elevationDeg),
  ),
  sum('geostationarySight', { latitudeDeg: 40, eastOfBoatDeg: 20 }, (v) =>
    satellite.geostationarySight(v.latitudeDeg, v.eastOfBoatDeg),
  ),
  sum('satellitePathLossDb', { frequencyMhz: 1621, heightKm: 780, elevationDeg: 30 }, (v) =>
    satellite.satellitePathLossDb(v.frequencyMhz, v.heightKm, v.elevationDeg),
  ),
  sum('systemTemperatureK', { lineLossDb: 2, receiverNoiseFigureDb: 2, antennaTemperatureK: 130 }, (v) =>
    satellite.systemTemperatureK({ ...RECEIVER, ...v }),
  ),
  sum('gOverTDbPerK', RECEIVER, (v) => satellite.gOverTDbPerK(v)),
  sum(
    'marginChange',
    {
      outsideGainDbi: 3,
      ownGainDbi: 0,
      ownObstructionDb: 3,
      lineLossDb: 2,
      receiverNoiseFigureDb: 2,
      antennaTemperatureK: 130,
    },
    (v) => satellite.marginChange(v),
  ),
  sum('hopGeometry', { hopKm: 500, heightKm: 300 }, (v) => skyWave.hopGeometry(v.hopKm, v.heightKm)),
  sum('secantAtHeight', { takeoffDeg: 20, heightKm: 110 }, (v) => skyWave.secantAtHeight(v.takeoffDeg, v.heightKm)),
  sum('longestHopKm', { heightKm: 110, takeoffDeg: 3 }, (v) => skyWave.longestHopKm(v.heightKm, v.takeoffDeg)),
  sum('f2BasicMuf', { ...IONOSPHERE, hopKm: 1000 }, (v) => skyWave.f2BasicMuf(v, v.hopKm)),
  sum('f2MirrorHeightKm', { m3000: 3 }, (v) => skyWave.f2MirrorHeightKm(v.m3000)),
  sum('eLayerMufMhz', { foEMhz: 3, hopKm: 800 }, (v) => skyWave.eLayerMufMhz(v.foEMhz, v.hopKm)),
  sum('eLayerScreeningMhz', { foEMhz: 3, takeoffDeg: 20 }, (v) => skyWave.eLayerScreeningMhz(v.foEMhz, v.takeoffDeg)),
  sum('workingFrequencyMhz', { frequencyMhz: 14 }, (v) => skyWave.workingFrequencyMhz(v.frequencyMhz)),
  sum('seaPathLossDb', SEA, (v) => seaPathLossDb(v)),
  sum('sphericalEarthLoss', SEA, (v) => sphericalEarthLoss(v)),
  sum('solarDeclinationDeg', { month: 6 }, (v) => sun.solarDeclinationDeg(v.month)),
  sum('solarZenithDeg', { ...PLACE, solarHour: 9 }, (v) => sun.solarZenithDeg(v, v.solarHour)),
  sum('hoursAfterSunset', { ...PLACE, solarHour: 23 }, (v) => sun.hoursAfterSunset(v, v.solarHour)),
  sum('troposcatterPathLossDb', { ...SEA, refractivity: 325 }, (v) => troposcatterPathLossDb(v)),
  sum('seaMedianLoss', { ...SEA, refractivity: 325 }, (v) => seaMedianLoss(v)),
  // Over no distance nothing varies, so nought is a distance here.
  sum('timeVariabilityDb', { frequencyMhz: 156.8, h1M: 20, h2M: 10, alongKm: 40, timePercent: 90 }, (v) =>
    timeVariabilityDb({ ...v, distanceKm: v.alongKm }, v.timePercent),
  ),
  sum('effectiveDistanceKm', { frequencyMhz: 156.8, h1M: 20, h2M: 10, alongKm: 40 }, (v) =>
    effectiveDistanceKm({ ...v, distanceKm: v.alongKm }),
  ),
  sum('twoRay', ROUGH, (v) => twoRay(v)),
  sum('twoRayPathLossDb', { ...ROUGH, distanceKm: 1 }, (v) => twoRayPathLossDb(v)),
];
