import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { launchChromium } from './support/chromium.ts';

/**
 * Draws the pages' icons from our mark, `dashboards/public/mark.svg`, for systems that take no SVG. The results are
 * part of the project: this is run again when the mark changes.
 */
const publicFolder = fileURLToPath(new URL('../../dashboards/public/', import.meta.url));

/** A maskable icon may be cut to any shape: the mark keeps to the safe zone, a circle of 80 % (W3C, Web App Manifest). */
const SAFE_ZONE = 0.8;
const GROUND = '#10191a';

const ICONS = [
  { name: 'icon-192.png', size: 192, part: 1, ground: 'transparent' },
  { name: 'icon-512.png', size: 512, part: 1, ground: 'transparent' },
  { name: 'icon-maskable-512.png', size: 512, part: SAFE_ZONE, ground: GROUND },
  { name: 'apple-touch-icon.png', size: 180, part: 0.9, ground: GROUND },
];

const mark = await readFile(`${publicFolder}mark.svg`, 'utf8');
const browser = await launchChromium();
try {
  for (const { name, size, part, ground } of ICONS) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const edge = (size * (1 - part)) / 2;
    await page.setContent(
      `<body style="margin:0;background:${ground}"><div style="position:absolute;inset:${edge}px">${mark}</div>`,
    );
    await page.screenshot({ path: publicFolder + name, omitBackground: true });
    await page.close();
  }
} finally {
  await browser.close();
}
