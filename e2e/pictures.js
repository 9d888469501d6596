// Takes pictures of pages for a person to look at: phone and desk, light and dark, each page from top to bottom.
// node e2e/pictures.js FOLDER PAGE…   A PAGE such as /machines is served by a demo shop; a whole address is opened as it is.
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { desk, open, phone, startBrowser, startDemo } from './browser.js';

const [folder, ...pages] = process.argv.slice(2);
if (!folder || pages.length === 0) {
  console.error('node e2e/pictures.js FOLDER PAGE…   for example: node e2e/pictures.js e2e/pictures / /machines');
  process.exit(2);
}
await mkdir(folder, { recursive: true });

const demo = pages.some((page) => page.startsWith('/')) ? await startDemo() : undefined;
const browser = await startBrowser();
try {
  for (const page of pages) await take(new URL(page, demo?.address));
} finally {
  await browser.close();
  await demo?.close();
}

async function take(address) {
  const name = `${address.pathname}${address.search}`.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'home';
  for (const [size, settings] of Object.entries({ phone, desk })) {
    const { page, response, faults, close } = await open(browser, address, settings);
    for (const colorScheme of ['light', 'dark']) {
      await page.emulateMedia({ colorScheme });
      const path = join(folder, `${name}-${size}-${colorScheme}.png`);
      await page.screenshot({ path, fullPage: true });
      console.log(`${path}  ${response.status()} ${await page.title()}`);
    }
    for (const fault of faults) console.log(`  ${fault}`);
    await close();
  }
}
