/** Who decides; printed at the foot of every page. */
export const GOVERNS =
  'Local codes, the makers’ instructions and the licensed or certificated installer who does the work govern over ' +
  'anything on this sheet. It is a calculation and a record: it passes no judgement on the boat’s fitness for sea and ' +
  'certifies nothing.';

/**
 * The usual cautions of the trade, printed on every sheet whatever sections are chosen. Common practice of marine
 * electricians, riggers and makers' manuals; where a figure is needed the maker's and the local code's own governs.
 */
export const CAUTIONS: readonly { readonly title: string; readonly text: string }[] = [
  {
    title: 'Isolate and fuse DC',
    text:
      'Isolate every battery bank and charging source before touching a conductor, and prove it dead with a meter. ' +
      'Every positive conductor needs a fuse or breaker close to its source, rated no higher than the conductor can ' +
      'carry. Never bridge, enlarge or leave out a fuse. Connect the battery last.',
  },
  {
    title: 'Batteries',
    text:
      'A short across any battery burns and can start a fire: cover terminals, use insulated tools, take off rings and ' +
      'watches. Charging batteries give off explosive gas: ventilate, no sparks. Lithium banks only with the maker’s ' +
      'management system and instructions.',
  },
  {
    title: 'Inverters and shore power',
    text:
      'Mains voltage kills. Inverter and shore-power circuits are work for a licensed electrician; unplug shore power ' +
      'and switch the inverter off and isolate it before opening anything it feeds.',
  },
  {
    title: 'Petrol vapour and gas',
    text:
      'Petrol vapour and cooking gas collect low in the hull and explode. Sniff, ventilate and run the blower before any ' +
      'work that can spark. In petrol engine and tank spaces use only equipment made to be ignition-protected.',
  },
  {
    title: 'Work aloft',
    text:
      'Go aloft only in a harness on two independent lines, with a trained person tending, tools on lanyards and nobody ' +
      'standing below. Radar off and every transmitter off, with a notice on the panel. If the mast or rigging is in ' +
      'doubt, unstep it or use a lift.',
  },
  {
    title: 'Overhead lines',
    text:
      'Look up before stepping a mast, raising a whip or moving the boat on its trailer or in the yard. Power lines arc ' +
      'across a gap, and aluminium, carbon and wet rope conduct. Keep well clear and ask the operator for the distance.',
  },
  {
    title: 'Never transmit without an antenna',
    text:
      'Transmitting into an open or shorted feeder can destroy the set. Connect the antenna or a rated dummy load first. ' +
      'Open-end readings on this sheet are taken with an antenna analyser, never with the radio’s own transmitter.',
  },
  {
    title: 'Keep clear of radiating antennas',
    text:
      'Keep people outside the distance the maker declares for each antenna at its power, and never touch one while ' +
      'transmitting. Never stand in a radar’s beam or look into an open waveguide. People with a pacemaker or other ' +
      'implant follow their doctor’s and the maker’s advice.',
  },
  {
    title: 'HF burn and shock',
    text:
      'A tuner’s output, its lead-in and the antenna wire carry thousands of volts on transmit and burn at a touch. ' +
      'Insulate and fence them from hands, rig them out of reach, and warn everyone on deck before transmitting.',
  },
  {
    title: 'Lightning and bonding',
    text:
      'No installation makes a boat safe from lightning. Keep off the mast, the rigging and the radios in a storm, and ' +
      'unplug what can be unplugged before it arrives. Bonding, down conductors and ground plates follow the local code; ' +
      'a careless bond can eat the hull and its fittings.',
  },
  {
    title: 'Distress equipment',
    text:
      'Never send a distress alert to test. Use the self-test, the DSC test call and the exercise the maker describes. ' +
      'A beacon or alert set off by mistake: tell the rescue centre before switching it off or cancelling. A fixed radio ' +
      'does not replace a registered 406 MHz beacon.',
  },
  {
    title: 'Licences',
    text:
      'A ship station licence, an operator’s certificate and a correctly programmed identity may be required where the ' +
      'boat is registered and where it sails. Use only approved equipment, within its licence, on the channels and powers ' +
      'allowed. Do not defeat a restriction in any set.',
  },
  {
    title: 'Holes, glands and compasses',
    text:
      'Holes in masts, decks and bulkheads weaken them and let in water: ask the builder or a rigger, seal and re-seal. ' +
      'Keep loudspeakers, sets and DC pairs clear of the steering compass and check its deviation afterwards.',
  },
  {
    title: 'A calculation is not a test',
    text:
      'Figures here come from data sheets, standards, measurements and stated assumptions. They show what to expect, and ' +
      'the commissioning record shows what is there. Do not rely on this installation until it has been tested on the air.',
  },
];
