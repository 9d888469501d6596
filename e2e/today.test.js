// A morning at the machine, on a phone: oil a whole stand, take it back, oil it again, come back later, read it in the log.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { start } from './browser.js';

let shop;
before(async () => { shop = await start(); });
after(() => shop?.close());

const stand = (page) => page.locator('section.stand').first();
const whole = (page) => stand(page).locator('.button-whole');
const rows = (page) => stand(page).locator('.point-row');

test('a whole stand is oiled with one press, and every sign stays unset', async () => {
  const { page, faults, close } = await shop.open('/');
  const points = await rows(page).count();
  assert.ok(points > 1, 'the first stand has several points');
  await whole(page).tap();
  await stand(page).getByText('Oiled at').first().waitFor();
  assert.equal(await stand(page).getByText('Oiled at').count(), points);
  // What is pressed next at each point is the sign: none was seen by oiling.
  assert.equal(await rows(page).getByRole('button', { name: /^Seen/ }).count(), points);
  assert.equal(await stand(page).getByText('seen at').count(), 0);
  assert.equal(await whole(page).count(), 0, 'nothing is left to press for the whole stand');

  await stand(page).getByRole('button', { name: /^Undo/ }).tap();
  await whole(page).waitFor();
  assert.equal(await stand(page).getByText('Oiled at').count(), 0, 'taken back');

  await whole(page).tap();
  await stand(page).getByText('Oiled at').first().waitFor();
  await page.reload();
  assert.equal(await stand(page).getByText('Oiled at').count(), points, 'kept over a reload');

  await page.getByRole('link', { name: 'Log', exact: true }).tap();
  await page.getByRole('heading', { level: 1 }).waitFor();
  const today = page.getByText('Rocker foot pivot');
  assert.ok((await today.count()) >= 1, 'the log names the point');
  assert.deepEqual(faults, []);
  await close();
});

test('a sign seen, a point not reached and a run are entries of their own', async () => {
  const { page, faults, close } = await shop.open('/?machine=knee-mill');
  const first = rows(page).first();
  const name = (await first.locator('.point-row-name').innerText()).trim();
  await first.getByRole('button').first().tap();
  await first.getByText(/ at \d/).first().waitFor();
  await first.getByRole('button', { name: /^Seen/ }).tap();
  await first.getByText(/seen at/i).waitFor();

  await stand(page).getByText('Could not reach one').tap();
  await stand(page).getByLabel('What was in the way?').fill('');
  await stand(page).getByRole('button', { name: 'Not reached' }).tap();
  const fault = page.getByText('What was in the way?').locator('xpath=ancestor::*[contains(@class, "field")][1]');
  await fault.waitFor();
  assert.match(await fault.innerText(), /words|reason|say/i, 'an empty reason is answered beside its field');
  await page.getByLabel('What was in the way?').fill('vice bolted over it');
  await page.getByRole('button', { name: 'Not reached' }).tap();
  await page.getByText('vice bolted over it').first().waitFor();

  await page.getByLabel(/It ran for/).fill('two');
  await page.getByRole('button', { name: 'Log the run' }).tap();
  await page.getByLabel(/It ran for/).waitFor();
  assert.equal(await page.getByLabel(/It ran for/).inputValue(), 'two', 'what was typed is kept');
  await page.getByLabel(/It ran for/).fill('90 min');
  await Promise.all([page.waitForEvent('load'), page.getByRole('button', { name: 'Log the run' }).tap()]);

  await page.goto(new URL('/log?machine=knee-mill', shop.address).href);
  for (const said of [name, 'vice bolted over it', '1.5 h']) {
    assert.ok((await page.getByText(said).count()) >= 1, `the log says ${said}`);
  }
  // The browser itself reports the answer 422 of a faulty form as an error of the console.
  assert.deepEqual(faults.filter((fault) => !fault.includes('422')), []);
  await close();
});

test('a key sent twice is kept once', async () => {
  const { page, close } = await shop.open('/?machine=crank-shaper');
  const second = page.locator('section.stand').nth(1).locator('.point-row').first();
  const form = second.locator('form').first();
  const sent = await form.evaluate((form) => ({ action: form.action, body: new URLSearchParams(new FormData(form)).toString() }));
  const counts = [];
  for (let times = 0; times < 2; times += 1) {
    const answer = await page.request.post(sent.action, {
      data: sent.body,
      headers: { 'content-type': 'application/x-www-form-urlencoded', origin: new URL(shop.address).origin },
    });
    assert.equal(answer.status(), 200);
    await page.goto(new URL('/log?machine=crank-shaper&kind=dosed', shop.address).href);
    counts.push(await page.locator('tbody tr').count());
  }
  assert.equal(counts[0], counts[1]);
  await close();
});
