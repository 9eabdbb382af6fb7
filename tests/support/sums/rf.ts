import { besselFunctions } from '../../../core/rf/bessel.ts';
import { cascade, lossStage, sensitivityDbm } from '../../../core/rf/cascade.ts';
import * as coax from '../../../core/rf/coax.ts';
import * as decibels from '../../../core/rf/decibels.ts';
import * as gnss from '../../../core/rf/gnssChain.ts';
import { tableLossDb } from '../../../core/rf/lossTable.ts';
import { conductorBeside, mastPattern } from '../../../core/rf/mastPattern.ts';
import * as mismatch from '../../../core/rf/mismatch.ts';
import * as noise from '../../../core/rf/noise.ts';
import * as overload from '../../../core/rf/overload.ts';
import * as pattern from '../../../core/rf/pattern.ts';
import * as short from '../../../core/rf/shortAntenna.ts';
import { COAX, PLUG } from '../../unit/links/fixture.ts';
import { type Sum, sum } from './sum.ts';

const ROW = { elements: 4, pitchWavelengths: 0.75 };
const HEEL = { heelDeg: 15, azimuthDeg: 30 };
const CHAIN = { externalDb: 12, lineLossDb: 2, receiverNoiseFigureDb: 6 };
const GNSS = { beforeLossDb: 0.5, gainDb: 28, noiseFigureDb: 1.5, afterLossDb: 6, receiverNoiseFigureDb: 3 };
const WIRE = { lengthM: 10, verticalShare: 0.9, radiusMm: 3, frequencyMhz: 4.125 };

const chain = ({ gainDb, noiseFigureDb, ...rest }: Readonly<typeof GNSS>): gnss.GnssChain => ({
  ...rest,
  amplifier: { gainDb, noiseFigureDb },
});

export const RF_SUMS: readonly Sum[] = [
  sum('besselFunctions', { maxOrder: 5, x: 2 }, (v) => besselFunctions(v.maxOrder, v.x)),
  sum('lossStage', { lossDb: 3 }, (v) => lossStage(v.lossDb)),
  sum('cascade', { gainDb: 10, noiseFigureDb: 2 }, (v) => cascade([v, v])),
  sum('sensitivityDbm', { figureDb: 6, bandwidthHz: 25_000, ratioDb: 10 }, (v) =>
    sensitivityDbm(v.figureDb, v.bandwidthHz, v.ratioDb),
  ),
  sum('attenuationDbPer100m', { frequencyMhz: 156.8, temperatureC: 30 }, (v) =>
    coax.attenuationDbPer100m(COAX, v.frequencyMhz, v.temperatureC),
  ),
  sum('coaxLossDb', { lengthM: 20, frequencyMhz: 156.8, temperatureC: 30 }, (v) =>
    coax.coaxLossDb(COAX, v.lengthM, v.frequencyMhz, v.temperatureC),
  ),
  sum('coaxLoss', { lengthM: 20, frequencyMhz: 156.8 }, (v) => coax.coaxLoss(COAX, v.lengthM, v.frequencyMhz)),
  sum('temperatureFactor', { temperatureC: 30 }, (v) => coax.temperatureFactor(v.temperatureC)),
  sum('wattsToDbm', { powerW: 25 }, (v) => decibels.wattsToDbm(v.powerW)),
  sum('dbmToWatts', { levelDbm: 44 }, (v) => decibels.dbmToWatts(v.levelDbm)),
  sum('afterLossW', { watts: 25, changeDb: 3 }, (v) => decibels.afterLossW(v.watts, v.changeDb)),
  sum('lostPercent', { changeDb: 3 }, (v) => decibels.lostPercent(v.changeDb)),
  sum('lossOfPercentDb', { percent: 40 }, (v) => decibels.lossOfPercentDb(v.percent)),
  sum('combineTolerances', { firstDb: 1, secondDb: 2 }, (v) => decibels.combineTolerances([v.firstDb, v.secondDb])),
  sum('powerToleranceDb', { powerW: 25, watts: 3 }, (v) => decibels.powerToleranceDb(v.powerW, v.watts)),
  sum('gnssCascade', GNSS, (v) => gnss.gnssCascade(chain(v))),
  sum('carrierToNoiseDbHz', { signalDbm: -128, elementGainDbi: 3, noiseFigureDb: 2, temperatureK: 130 }, (v) =>
    gnss.carrierToNoiseDbHz(v.signalDbm, v.elementGainDbi, v.noiseFigureDb, v.temperatureK),
  ),
  sum('windowVerdict', { netGainDb: 20 }, (v) => gnss.windowVerdict(v.netGainDb, gnss.GAIN_WINDOWS.imo)),
  sum('passiveRunOverDb', { beforeLossDb: 0.5, afterLossDb: 6 }, (v) =>
    gnss.passiveRunOverDb({ ...chain(GNSS), ...v, amplifier: null }),
  ),
  sum('longestCableLossDb', { gainDb: 28 }, (v) => gnss.longestCableLossDb(v.gainDb, gnss.GAIN_WINDOWS.imo)),
  sum('tableLossDb', { frequencyMhz: 156.8 }, (v) => tableLossDb(PLUG.lossTable, v.frequencyMhz)),
  sum('mastPattern', { frequencyMhz: 156.8, diameterM: 0.1, axisToAxisM: 0.5, ...ROW }, (v) =>
    mastPattern({ ...v, antenna: v }),
  ),
  sum('conductorBeside', { antennaLowM: 5, antennaHighM: 6, lowM: 0, highM: 15 }, (v) =>
    conductorBeside({ lowM: v.antennaLowM, highM: v.antennaHighM }, v),
  ),
  sum('reflectionOfVswr', { vswr: 1.5 }, (v) => mismatch.reflectionOfVswr(v.vswr)),
  sum('vswrOfReflection', { reflection: 0.2 }, (v) => mismatch.vswrOfReflection(v.reflection)),
  sum('returnLossDb', { vswr: 1.5 }, (v) => mismatch.returnLossDb(v.vswr)),
  sum('mismatchLossDb', { vswr: 1.5 }, (v) => mismatch.mismatchLossDb(v.vswr)),
  sum('totalLineLossDb', { lossDb: 3, vswr: 1.5 }, (v) => mismatch.totalLineLossDb(v.lossDb, v.vswr)),
  sum('vswrAtInput', { lossDb: 3, vswr: 1.5 }, (v) => mismatch.vswrAtInput(v.lossDb, v.vswr)),
  sum('openEndVswr', { lossDb: 3 }, (v) => mismatch.openEndVswr(v.lossDb)),
  sum('lossOfOpenEndVswrDb', { vswr: 4 }, (v) => mismatch.lossOfOpenEndVswrDb(v.vswr)),
  sum('manMadeNoise', { frequencyMhz: 8 }, (v) => noise.manMadeNoise('rural', v.frequencyMhz)),
  sum('galacticNoise', { frequencyMhz: 8 }, (v) => noise.galacticNoise(v.frequencyMhz)),
  sum('externalNoise', { frequencyMhz: 8, foF2Mhz: 5 }, (v) => noise.externalNoise({ environment: 'rural', ...v })),
  sum('noisePowerDbm', { figureDb: 12, bandwidthHz: 2700 }, (v) => noise.noisePowerDbm(v.figureDb, v.bandwidthHz)),
  sum('noiseFieldDbuvPerM', { figureDb: 12, frequencyMhz: 8, bandwidthHz: 2700 }, (v) =>
    noise.noiseFieldDbuvPerM(v.figureDb, v.frequencyMhz, v.bandwidthHz, 'isotropic'),
  ),
  sum('systemNoiseFigureDb', CHAIN, (v) => noise.systemNoiseFigureDb(v)),
  sum('desenseDb', CHAIN, (v) => noise.desenseDb(v)),
  sum('effectiveSensitivityDbm', { ...CHAIN, statedDbm: -119 }, (v) => noise.effectiveSensitivityDbm(v.statedDbm, v)),
  sum('strongSignalMargins', { levelDbm: -10, offsetMhz: 1 }, (v) =>
    overload.strongSignalMargins('ais', v.levelDbm, v.offsetMhz),
  ),
  sum(
    'strongSignalDbm',
    {
      powerW: 25,
      transmitterLossDb: 1,
      transmitterGainDbi: 2,
      receiverGainDbi: 2,
      receiverLossDb: 1,
      pathLossDb: 50,
    },
    (v) => overload.strongSignalDbm(v),
  ),
  sum('freeSpaceDistanceM', { frequencyMhz: 156.8, limitDb: 60 }, (v) =>
    overload.freeSpaceDistanceM(v.frequencyMhz, v.limitDb),
  ),
  sum('patternShare', { ...ROW, elevationDeg: 5 }, (v) => pattern.patternShare(v, v.elevationDeg)),
  sum('collinearGainDbi', ROW, (v) => pattern.collinearGainDbi(v)),
  sum('halfPowerWidthDeg', ROW, (v) => pattern.halfPowerWidthDeg(v)),
  sum('collinearLengthM', { ...ROW, wavelengthM: 1.9 }, (v) => pattern.collinearLengthM(v, v.wavelengthM)),
  sum('tiltLossDb', { ...ROW, elevationDeg: 5 }, (v) => pattern.tiltLossDb(v, v.elevationDeg)),
  sum('tiltLossByWidthDb', { widthDeg: 30, elevationDeg: 5 }, (v) =>
    pattern.tiltLossByWidthDb(v.widthDeg, v.elevationDeg),
  ),
  sum('elevationSeenDeg', HEEL, (v) => pattern.elevationSeenDeg(v)),
  sum('polarisationLossDb', HEEL, (v) => pattern.polarisationLossDb(v)),
  sum('heeledGainDbi', { ...ROW, ...HEEL }, (v) => pattern.heeledGainDbi(v, v)),
  sum('lengthInWavelengths', WIRE, (v) => short.lengthInWavelengths(v)),
  sum('feedImpedance', WIRE, (v) => short.feedImpedance(v)),
  sum('shortAntenna', { ...WIRE, groundLossOhm: 10, coilQ: 200 }, (v) => short.shortAntenna(v, v)),
  sum('leastEfficiency', { ...WIRE, frequencyMhz: 16, groundLossOhm: 10 }, (v) =>
    short.leastEfficiency(v, v.groundLossOhm),
  ),
  sum('insulatorPeakV', { groundLossOhm: 10, powerW: 100 }, (v) =>
    short.insulatorPeakV(short.shortAntenna(WIRE, { groundLossOhm: 10 }), v.groundLossOhm, v.powerW),
  ),
  sum('conductorLossOhm', { ...WIRE, conductivityMSPerM: 1.35 }, (v) =>
    short.conductorLossOhm(v, v.conductivityMSPerM),
  ),
];
