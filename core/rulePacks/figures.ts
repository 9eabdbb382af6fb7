/**
 * Figures of the rules, each with the text it is from (reading notes on that text: docs/rule-packs.md). Facts only; asserted one by
 * one in tests/unit/rulePacks/figures.test.ts.
 */
export const RULE_FIGURES = {
  /** 47 CFR 80.1081(a): separate means of alerting the shore. */
  alertMeans: 2,
  /** SOLAS IV/13, 2.1 and 2.2, with and without an emergency source, h. */
  solasReserveWithSourceH: 1,
  solasReserveH: 6,
  /** SOLAS IV/13, guidance: share of the transmit current in the load. */
  solasTransmitShare: 0.5,
  /** SOLAS IV/13, 6.1: the charger restores the least capacity within, h. */
  solasRechargeH: 10,
  /** SOLAS IV/13, 6.2: between checks of the capacity, months. */
  solasCapacityCheckMonths: 12,
  /** SOLAS III/6.2: survival-craft sets of 300 to 500 GT, and above; locating devices above. */
  survivalVhfSmaller: 2,
  survivalVhf: 3,
  survivalSarts: 2,
  /** 47 CFR 80.1105(c), (d): methods of keeping it working, near and far. */
  availabilityNear: 1,
  availabilityFar: 2,
  /** 47 CFR 80.875(a), per cent of the rated voltage, and (b), h and m. */
  usVoltagePercent: 10,
  usReserveH: 6,
  usBatteryHeadRoomM: 0.26,
  /** 47 CFR 80.965(a), h. */
  usLakesReserveH: 2,
  /** 47 CFR 80.921(b), h. */
  usPassengerReserveH: 3,
  /** 46 CFR 28.375(b), h, and (d), m. */
  usFishingReserveH: 3,
  usFishingShortM: 11,
  /** MGN 673, 1.1 and 1.1.2, months. */
  ukBeaconTestMonths: 12,
  ukBeaconServiceMonths: 60,
  /** Large yacht code LY3 under 300 GT, h. */
  ukYachtReserveH: 3,
  /** SI 1999/3210, 24(2)(c): h, shares of the transmit currents, and lengths, m. */
  ukFishingReserveH: 6,
  ukFishingVhfTransmitShare: 1 / 5,
  ukFishingHfTransmitShare: 1 / 3,
  ukFishingShortestM: 12,
  ukFishingLongestM: 45,
  /** OSR 2012-13, 3.29.1(b)(i), W. */
  osrVhfW: 25,
  /** OSR 2012-13, 3.29.1(b)(ii), per cent of the power. */
  osrFeederPercent: 40,
  /** OSR about 2022, 3.29.6(b), m. */
  osrAisLengthM: 0.38,
  osrAisHeightM: 3,
} as const;

/**
 * OSR 2012-13, 3.29.1(b)(iii): longest run of each cable that is taken as good enough, m, by part of the catalogue. The last two
 * are one maker's types in the text, and stand here by their kind.
 */
export const OSR_CABLE_TABLE: readonly { readonly name: string; readonly partId: string; readonly upToM: number }[] = [
  { name: 'RG-8X', partId: 'coax-rg-8x', upToM: 15 },
  { name: 'RG-8/U', partId: 'coax-rg-8-u', upToM: 28 },
  { name: 'semi-air RG-8', partId: 'coax-rg-8-semi-air', upToM: 43 },
  { name: '600 class', partId: 'coax-600-class', upToM: 70 },
];
