import type { Rule } from './rule.ts';
import {
  beaconMissing,
  beaconRegistration,
  emergencyAntennaMissing,
  emergencyAntennaUnusable,
} from './rules/distress.ts';
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
import { duplicateLabel, setUnconnected, undatedRecord, unknownPart } from './rules/records.ts';
import { floodTakesAll, lightningMultihull, longRangeOneSupply, sharedSinglePoint } from './rules/redundancyRules.ts';
import { aisNearMetal, antennaSpacing, antennaTooNear, noSky, poleShadow, repeaterFeedback } from './rules/siting.ts';
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
  noSky,
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
  beaconMissing,
  lightningMultihull,
];
