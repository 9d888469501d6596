// Makes the pictures of the README: today's round on a phone, by day and by night, and a machine's drawing on a desk.
// cargo build, then: OILWRIGHT_BIN=target/debug/oilwright node e2e/readme.js
import { desk, open, phone, startBrowser, startDemo } from './browser.js';

const demo = await startDemo();
const browser = await startBrowser();
try {
  const shots = [];
  for (const colorScheme of ['light', 'dark']) {
    const { page, close } = await open(browser, new URL('/', demo.address), { ...phone, colorScheme, deviceScaleFactor: 2 });
    shots.push((await page.screenshot()).toString('base64'));
    await close();
  }
  const sheet = await browser.newPage({ viewport: { width: 820, height: 860 } });
  const images = shots.map((shot) => `<img width="390" height="844" src="data:image/png;base64,${shot}">`).join('');
  await sheet.setContent(`<body style="margin:8px;display:flex;gap:24px;background:#fff">${images}</body>`);
  await sheet.screenshot({ path: new URL('../docs/pictures/today.png', import.meta.url).pathname });
  const { page, close } = await open(browser, new URL('/machines/small-lathe?side=seen-front', demo.address), desk);
  await page.locator('.side-window').screenshot({ path: new URL('../docs/pictures/machine.png', import.meta.url).pathname });
  await close();
} finally {
  await browser.close();
  await demo.close();
}
