import type { Rule } from './rule.ts';
import { antennaClaim, whipBesideMast } from './rules/antenna.ts';
import {
  beaconMissing,
  beaconRegistration,
  emergencyAntennaMissing,
  emergencyAntennaUnusable,
} from './rules/distress.ts';
import { personNearHf, personNearTerminal } from './rules/exposure.ts';
import { cableImpedance, connectorBand, feederLoss, feederMeasured, transmitRating } from './rules/feeder.ts';
import { hfEarth, hfInsulatorLow, hfLeadInInside } from './rules/hf.ts';
import {
  bendRadius,
  bundleGap,
  deadCables,
  foldedWhip,
  jointWet,
  ledNearAntenna,
  metalMount,
  runUnsupported,
  surplusCable,
} from './rules/installation.ts';
import { personNearAntenna, radarAtEyeHeight } from './rules/people.ts';
import { aisNoFix, dscNoPosition, sourceNoFix } from './rules/position.ts';
import {
  batteriesLow,
  feedUnfused,
  fuseTooFar,
  fuseTooLarge,
  fuseTooSmall,
  measuredSag,
  voltDrop,
} from './rules/power.ts';
import { gnssGain, outsideMethod, satelliteLine } from './rules/reach.ts';
import { duplicateLabel, setUnconnected, undatedRecord, unknownPart } from './rules/records.ts';
import { floodTakesAll, lightningMultihull, longRangeOneSupply, sharedSinglePoint } from './rules/redundancyRules.ts';
import { aisNearMetal, antennaSpacing, antennaTooNear, noSky, poleShadow, repeaterFeedback } from './rules/siting.ts';
import { ownSignalStrong } from './rules/strong.ts';
import { vswrHigh, vswrMasked } from './rules/vswr.ts';

/** Every rule, in the order in which findings of one severity are listed. */
export const RULES: readonly Rule[] = [
  sharedSinglePoint,
  floodTakesAll,
  aisNoFix,
  dscNoPosition,
  beaconRegistration,
  emergencyAntennaMissing,
  emergencyAntennaUnusable,
  feedUnfused,
  fuseTooLarge,
  radarAtEyeHeight,
  personNearAntenna,
  personNearTerminal,
  personNearHf,
  transmitRating,
  feederLoss,
  feederMeasured,
  vswrMasked,
  vswrHigh,
  voltDrop,
  measuredSag,
  fuseTooFar,
  fuseTooSmall,
  batteriesLow,
  longRangeOneSupply,
  jointWet,
  cableImpedance,
  bendRadius,
  surplusCable,
  hfInsulatorLow,
  hfLeadInInside,
  hfEarth,
  aisNearMetal,
  antennaTooNear,
  ownSignalStrong,
  whipBesideMast,
  antennaClaim,
  noSky,
  satelliteLine,
  gnssGain,
  poleShadow,
  repeaterFeedback,
  sourceNoFix,
  metalMount,
  unknownPart,
  runUnsupported,
  bundleGap,
  deadCables,
  antennaSpacing,
  connectorBand,
  ledNearAntenna,
  foldedWhip,
  duplicateLabel,
  undatedRecord,
  setUnconnected,
  outsideMethod,
  beaconMissing,
  lightningMultihull,
];
