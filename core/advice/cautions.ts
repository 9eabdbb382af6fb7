/** What to mind with each sort of work. Common practice, no source, where none is named. */

export const BY_ELECTRICIAN =
  'DC work is for a qualified marine electrician, to the local code: a fuse at each source, the pair sized for its length.';

export const NEVER_PARALLEL =
  'Never join two batteries: put a break-before-make changeover switch or an isolator at the set. The drawing has no part for it, so it is not among the things that can fail here.';

export const TWO_LEADS =
  'Two leads to one set: each needs its own fuse at its source, and a label at the set that says where both are switched off.';

export const STARTER =
  'A set on a starter battery may reset while the engine cranks, and listening flattens it: watch its voltage.';

export const SMALL_BATTERY =
  'Fix it against a knockdown, ventilate as its maker asks, and charge it through its own regulated lead: straight across another battery makes one bank of the two.';

export const BY_RIGGER = 'Work aloft is for a rigger.';

export const NEW_FEEDER =
  'The length is reckoned along the boat, not measured: measure the route before cutting. A deck-stepped mast needs a plug at its foot, kept dry.';

export const CLEAR_OF_PEOPLE =
  'Keep people away from a sending antenna: 1.8 m is one maker’s figure for 25 W into a small whip. Check the distance to the compass and to other antennas.';

export const BY_HAND =
  'Somebody has to set it over: label the switches, and try it once on a working channel while nothing is wrong.';

export const BOTH_SWITCHES =
  'Set both switches over before anyone transmits: a transmitter into an open lead or into another set can damage both.';

export const AIS_OFF =
  'Switch the AIS off before its antenna is lent, and on again after: it sends by itself, and would send into an open lead.';

export const TRY_EMERGENCY =
  'Try it once with its lead and plug: voice from the deck reaches much less far than from the masthead.';

export const POSITION_TALKS =
  'Check that both ends speak the same data standard, and that the set then shows a position and its time.';

export const OPEN_SKY = 'Seal the deck gland; keep it out of a radar beam and clear of sending antennas.';

export const SAME_PORTS = 'Check the maker’s statement of what it does without supply before relying on it.';

export const REGISTER = 'Register it to this boat, keep its battery in date, and test it only by its own test.';

export const CHARGED = 'Keep it charged, with the grab bag; a distress alert needs its identity programmed.';

export const SUBSCRIBED =
  'Keep it charged, with the grab bag, and its subscription running; send a trial message before a passage.';

export const IN_DATE = 'Keep its battery in date, and test it only by its own test.';

export const HEAVY =
  'A battery is heavy and must not move in a knockdown; ventilate as its maker asks, and lengthen its leads to the local code.';
