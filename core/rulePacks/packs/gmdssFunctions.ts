import { twoMeans } from '../checks/alertMeans.ts';
import {
  bridgeToBridge,
  generalTraffic,
  locatingSignals,
  onScene,
  receiveShoreAlerts,
  rescueVoice,
  safetyInformation,
  shipToShipAlerts,
} from '../checks/functions.ts';
import type { PackRule } from '../types.ts';
import { rulesOf } from './define.ts';
import { SUBPART_W } from './gmdssSource.ts';

const theme = 'What the radio must be able to do';

/** 47 CFR 80.1081, which is SOLAS IV/4. */
export const GMDSS_FUNCTIONS: readonly PackRule[] = rulesOf(SUBPART_W, [
  {
    id: 'gmdss-two-alerts',
    theme,
    title: 'Two separate, independent means of alerting the shore, each of another radio service',
    clause: '47 CFR 80.1081(a); SOLAS IV/4',
    unseen: 'whether a satellite service passes distress alerts; whether a coast station is in a handheld’s reach',
    check: (input) => twoMeans(input, { differs: true, fixed: false, bySeaArea: true }),
  },
  {
    id: 'gmdss-receive-alerts',
    theme,
    title: 'Receive alerts that the shore sends',
    clause: '47 CFR 80.1081(b); SOLAS IV/4',
    unseen: 'that the sets are on and watched; which satellite broadcasts are subscribed to',
    check: receiveShoreAlerts,
  },
  {
    id: 'gmdss-ship-alerts',
    theme,
    title: 'Send alerts to other ships, and receive theirs',
    clause: '47 CFR 80.1081(c); SOLAS IV/4',
    unseen: 'that the sets are on and watched; how near another ship is',
    check: shipToShipAlerts,
  },
  {
    id: 'gmdss-rescue-traffic',
    theme,
    title: 'Speak with those who coordinate a rescue',
    clause: '47 CFR 80.1081(d); SOLAS IV/4',
    unseen: 'whether a rescue centre can be worked through a satellite service',
    check: rescueVoice,
  },
  {
    id: 'gmdss-on-scene',
    theme,
    title: 'Speak with those at the scene',
    clause: '47 CFR 80.1081(e); SOLAS IV/4',
    unseen: 'that a handheld is charged',
    check: onScene,
  },
  {
    id: 'gmdss-locating',
    theme,
    title: 'Signals by which searchers find the boat',
    clause: '47 CFR 80.1081(f); SOLAS IV/4',
    unseen: 'whether a beacon’s homing signal will do',
    check: locatingSignals,
  },
  {
    id: 'gmdss-safety-information',
    theme,
    title: 'Receive maritime safety information',
    clause: '47 CFR 80.1081(g); SOLAS IV/4',
    unseen: 'what is broadcast in the waters she goes to, and what is subscribed to',
    check: safetyInformation,
  },
  {
    id: 'gmdss-general',
    theme,
    title: 'Ordinary traffic with the shore',
    clause: '47 CFR 80.1081(h); SOLAS IV/4',
    unseen: 'accounts and subscriptions',
    check: generalTraffic,
  },
  {
    id: 'gmdss-bridge',
    theme,
    title: 'Speak from helm to helm',
    clause: '47 CFR 80.1081(i); SOLAS IV/4',
    unseen: 'that the set is worked from the helm',
    check: bridgeToBridge,
  },
]);
