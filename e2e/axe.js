// Asks axe-core what on a page keeps people out: contrast, names, order, labels.
// The script goes in by the debugger, so the page keeps its real policy and the policy itself is under test.
import { readFileSync } from 'node:fs';

const source = readFileSync(new URL('node_modules/axe-core/axe.min.js', import.meta.url), 'utf8');

/** The broken rules of the page, each with its places; an empty list means that nothing was found. */
export async function violations(page) {
  await page.evaluate(source);
  const { violations } = await page.evaluate(() => globalThis.axe.run(document));
  return violations.map(({ id, help, nodes }) => ({
    rule: id,
    says: help,
    places: nodes.map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary}`),
  }));
}
