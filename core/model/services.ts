/** What the boat must be able to do, in the order the failure matrix shows it. */
export const SERVICES = [
  { id: 'voice-fixed', code: 'VF', name: 'Voice, fixed VHF', always: true },
  { id: 'voice-handheld', code: 'VH', name: 'Voice, handheld VHF', always: true },
  { id: 'digital-alert', code: 'DA', name: 'Digital alert with identity and position', always: true },
  { id: 'ais-transmit', code: 'AT', name: 'Seen on AIS', always: true },
  { id: 'ais-receive', code: 'AR', name: 'Sees AIS', always: true },
  { id: 'safety-information', code: 'SI', name: 'Safety information received', always: true },
  { id: 'long-range', code: 'LR', name: 'Long-range voice or text', always: true },
  { id: 'beacon', code: 'BC', name: '406 MHz beacon', always: true },
  { id: 'position', code: 'PO', name: 'Position', always: false },
  { id: 'locating', code: 'LO', name: 'Locating signal (SART)', always: false },
  { id: 'internet-near-shore', code: 'IN', name: 'Internet near shore', always: false },
  { id: 'person-overboard', code: 'PB', name: 'Person overboard locating', always: false },
] as const;
export type ServiceId = (typeof SERVICES)[number]['id'];
export type Grade = 'full' | 'reduced' | 'lost';
