// Every page of the demo, on a phone and on a desk, light and dark: no accessibility fault under the real policy, no sideways scroll,
// no script error, no blocked style, nothing asked of another host.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { violations } from './axe.js';
import { desk, phone, start } from './browser.js';

const pages = [
  '/', '/?machine=knee-mill', '/machines', '/machines/crank-shaper', '/machines/knee-mill',
  '/machines/crank-shaper/findings', '/machines/crank-shaper/findings?about=3', '/machines/crank-shaper/audit',
  '/machines/crank-shaper/options', '/machines/crank-shaper/points/3/edit', '/findings', '/machines/crank-shaper/edit',
  '/machines/crank-shaper/points', '/log/withdrawals?entry=20&from=log', '/machines/crank-shaper/points/3/evidence', '/machines/crank-shaper/points/14/removal',
  '/machines/crank-shaper/points/9', '/machines/knee-mill/points/2', '/machines/knee-mill/points/10',
  '/machines/knee-mill/reservoirs/trip-worm-bath', '/machines/crank-shaper/reservoirs/gear-case', '/machines/planer/reservoirs/way-tray', '/shelf', '/shelf/way-68', '/shelf/new?visc_1=1000+SUS&at_1=100+F', '/shelf/way-68/edit', '/shelf/blend?one=drum-68&other=gear-220&grade=100',
  '/shelf/can?can=needle', '/shelf/plan', '/shelf/plan?oils=2&buy=yes', '/log/stock?oil=way-68', '/calc', '/calc/viscosity?known=40C%3D68&index=95&at=5C', '/calc/old-name?words=300%20SUS', '/calc/journal?diameter=50mm&length=50mm&clearance=0.05mm&load=2kN&speed=600rpm&viscosity=25mPa.s', '/calc/network', '/rules', '/log',
  '/machines/crank-shaper/pictures', '/machines/small-lathe?side=seen-front', '/machines/planer/points/22/place', '/settings',
  '/log/corrections?entry=20&from=log', '/log/reservoirs?machine=planer', '/machines/planer', '/?machine=small-lathe&machine=planer', '/hand', '/pattern', '/machines/nowhere',
];

let shop;
before(async () => { shop = await start(); });
after(() => shop?.close());

for (const path of pages) {
  test(path, async () => {
    for (const [size, settings] of Object.entries({ phone, desk })) {
      for (const colorScheme of ['light', 'dark']) {
        const { page, response, faults, close } = await shop.open(path, { ...settings, colorScheme });
        const missing = path === '/machines/nowhere';
        assert.equal(response.status(), missing ? 404 : 200);
        assert.match(response.headers()['content-security-policy'], /default-src 'none'/);
        assert.deepEqual(await violations(page), [], `${size}, ${colorScheme}`);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(wide <= 0, `${size}: ${wide} px too wide`);
        // The browser itself reports the answer 404 as an error of the console.
        assert.deepEqual(faults.filter((fault) => !(missing && fault.includes('404'))), []);
        await close();
      }
    }
  });
}
