// Starts the demo shop and a browser for a test, opens pages, and ends both.
// Start with `start`; `close` must run whatever happens, so call it in `after`.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { chromium } from 'playwright-core';

/** A phone in the hand, at the machine. */
export const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** A screen on the bench. */
export const desk = { viewport: { width: 1280, height: 800 } };

// Without these the browser looks for its maker's servers, or refuses to run as root.
const switches = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

/** Starts the browser with a fresh profile and, beside it, a demo shop of its own. */
export async function start() {
  const shop = await startDemo();
  try {
    const browser = await startBrowser();
    return {
      address: shop.address,
      open: (path, settings) => open(browser, new URL(path, shop.address), settings),
      close: async () => {
        await browser.close();
        await shop.close();
      },
    };
  } catch (error) {
    await shop.close();
    throw error;
  }
}

/** The browser alone, for pages that are served elsewhere. */
export function startBrowser() {
  const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
  return chromium.launch({ executablePath, headless: true, args: switches });
}

/**
 * Opens a page in a context of its own, on the phone unless the settings say otherwise.
 * `faults` gathers what no page may do: script errors, blocked styles and scripts, requests to another host.
 */
export async function open(browser, address, settings = phone) {
  const context = await browser.newContext({ locale: 'en-GB', reducedMotion: 'reduce', ...settings });
  const page = await context.newPage();
  const faults = [];
  page.on('pageerror', (error) => faults.push(`script error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.protocol.startsWith('http') && url.host !== address.host) faults.push(`asks another host: ${url}`);
  });
  const response = await page.goto(address.href);
  return { page, response, faults, close: () => context.close() };
}

/** Starts the demo and waits for the line that names its address. */
export async function startDemo() {
  const program = process.env.OILWRIGHT_BIN;
  if (!program) throw new Error('OILWRIGHT_BIN names no program; `cargo xtask test --only browser` builds it and sets it.');
  const demo = spawn(program, ['demo', '--port', '0'], { stdio: ['ignore', 'pipe', 'inherit'] });
  await once(demo, 'spawn');
  for await (const line of createInterface({ input: demo.stdout })) {
    const address = line.match(/http:\/\/127\.0\.0\.1:\d+\//)?.[0];
    if (!address) continue;
    demo.stdout.resume(); // Nobody reads on, and a full pipe would stop the server.
    return { address, close: () => end(demo) };
  }
  throw new Error(`${program} demo ended without a line that names its address.`);
}

async function end(child) {
  if (child.exitCode !== null || child.signalCode !== null) return;
  child.kill();
  await once(child, 'exit');
}
