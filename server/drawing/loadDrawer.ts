import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Drawer } from '../schemas/drawing.ts';

/** What draws the pages of this folder here: their build puts it beside them, out of the reach of browsers. Null where it is not built. */
export async function loadDrawer(pagesFolder: string): Promise<Drawer | null> {
  const file = join(pagesFolder, '..', 'dist-drawer', 'draw.js');
  if (!existsSync(file)) return null;
  // The pages' sources hold it to this type.
  const { drawer } = (await import(pathToFileURL(file).href)) as { drawer: Drawer };
  return drawer;
}
