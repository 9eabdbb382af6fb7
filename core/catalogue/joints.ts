import type { ConnectorType, LossTable, PartOf } from '../model/part.ts';
import { CONNECTORS } from './connectors.ts';
import { device, PRACTICE, rf, way } from './inlinePart.ts';

function lossOf(connectorId: string): LossTable {
  const found = CONNECTORS.find((part) => part.id === connectorId);
  if (!found) throw new RangeError(`There is no connector ${connectorId} in the catalogue.`);
  return found.lossTable;
}

/** Two connectors mated: twice the loss of one. */
const pair = (table: LossTable): LossTable => ({
  ...table,
  rows: table.rows.map((row) => ({ ...row, lossDb: row.lossDb * 2 })),
  toleranceDb: table.toleranceDb * 2,
  source: `${table.source}; pair = two connectors`,
});

const joint = (
  id: string,
  name: string,
  description: string,
  connector: ConnectorType,
  table: LossTable,
): PartOf<'inline'> =>
  device({
    id,
    deviceClass: 'joint',
    name,
    description,
    ports: [rf('a', 'side A', connector), rf('b', 'side B', connector)],
    throughs: [way('a', 'b', 'joint')],
    lossTables: { joint: table },
  });

const ADAPTER: LossTable = {
  rows: [
    { frequencyMhz: 1, lossDb: 0.02 },
    { frequencyMhz: 162, lossDb: 0.1 },
    { frequencyMhz: 1600, lossDb: 0.2 },
  ],
  toleranceDb: 0.1,
  basis: 'assumed',
  source: PRACTICE,
};

/** Joints between two runs and adapters between two series of connector. */
export const JOINTS: readonly PartOf<'inline'>[] = [
  joint(
    'joint-uhf-pair',
    'Joint, PL-259 pair with barrel',
    'Two plugs and a barrel, as at a mast foot. Costs almost nothing while dry; keep it dry and within reach.',
    'uhf',
    pair(lossOf('connector-uhf')),
  ),
  joint('joint-n-pair', 'Joint, N pair', 'Plug and socket, N type.', 'n', pair(lossOf('connector-n'))),
  joint(
    'joint-tnc-pair',
    'Joint, TNC pair',
    'Plug and socket, TNC type, for L-band and GNSS leads.',
    'tnc',
    pair(lossOf('connector-tnc')),
  ),
  joint(
    'joint-fme-pair',
    'Joint, FME pair',
    'Small plug and socket that pass through a mast.',
    'fme',
    pair(lossOf('connector-fme')),
  ),
  joint(
    'joint-deck-plug-uhf',
    'Through-deck plug, UHF type',
    'Watertight gland with plug and socket.',
    'uhf',
    pair(lossOf('connector-uhf')),
  ),
  device({
    id: 'adapter-uhf-bnc',
    deviceClass: 'adapter',
    name: 'Adapter UHF to BNC',
    description: 'Lets a BNC antenna onto a fixed set.',
    ports: [rf('a', 'UHF side', 'uhf'), rf('b', 'BNC side', 'bnc')],
    throughs: [way('a', 'b', 'adapter')],
    lossTables: { adapter: ADAPTER },
  }),
  device({
    id: 'adapter-uhf-n',
    deviceClass: 'adapter',
    name: 'Adapter UHF to N',
    description: 'Between the two series.',
    ports: [rf('a', 'UHF side', 'uhf'), rf('b', 'N side', 'n')],
    throughs: [way('a', 'b', 'adapter')],
    lossTables: { adapter: ADAPTER },
  }),
  device({
    id: 'adapter-n-tnc',
    deviceClass: 'adapter',
    name: 'Adapter N to TNC',
    description: 'Lets a thick cable with N plugs onto a GNSS or L-band set.',
    ports: [rf('a', 'N side', 'n'), rf('b', 'TNC side', 'tnc')],
    throughs: [way('a', 'b', 'adapter')],
    lossTables: { adapter: ADAPTER },
  }),
];
