import { z } from 'zod';

const licencesSchema = z.array(
  z.object({ name: z.string(), version: z.string(), licence: z.string(), text: z.string() }),
);

/** One shipped work and the terms it comes under. */
export type Licence = z.infer<typeof licencesSchema>[number];

/** Made when the program is built, beside the page. */
const ADDRESS = './licences.json';

/**
 * The licences of everything shipped, or a sentence when their list is not there.
 * @param get fetches one of the program's own files
 */
export async function loadLicences(
  get: (address: string) => Promise<Pick<Response, 'ok' | 'json'>>,
): Promise<readonly Licence[] | string> {
  try {
    const response = await get(ADDRESS);
    const licences = response.ok ? licencesSchema.safeParse(await response.json()) : null;
    if (licences?.success) return licences.data;
  } catch {
    // Said below.
  }
  return 'The list of licences is not in this build. A build made with npm run build has it.';
}

/** Those whose name or licence holds the words asked for. */
export function matchingLicences(licences: readonly Licence[], query: string): readonly Licence[] {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  return licences.filter(({ name, licence }) => {
    const text = `${name} ${licence}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
