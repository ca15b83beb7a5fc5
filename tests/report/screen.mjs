// Opens reports on a phone and on a wide screen, by day and by night: no violation that axe sees, nothing wider than the
// window, no picture that does not show. node screen.mjs PICTURES REPORT...
import { chromium } from 'playwright-core';
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const [pictures, ...reports] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
let faults = 0;
const fault = (where, what) => { faults += 1; console.error(`${where}: ${what}`); };
for (const report of reports) {
    for (const width of [320, 390, 1280]) {
        for (const colorScheme of ['light', 'dark']) {
            // axe comes in past the report's own policy, which forbids every script.
            const context = await browser.newContext({ viewport: { width, height: 844 }, colorScheme, bypassCSP: true });
            const page = await context.newPage();
            const errors = [];
            page.on('console', (message) => { if (message.type() === 'error') errors.push(message.text()); });
            await page.goto(`file://${resolve(report)}`);
            const where = `${basename(report)} at ${width}, ${colorScheme}`;
            errors.forEach((error) => fault(where, error));
            const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
            if (wide > 0) fault(where, `${wide} pixels wider than the window`);
            const unseen = await page.evaluate(() => [...document.images].filter((image) => image.naturalWidth === 0).length);
            if (unseen > 0) fault(where, `${unseen} pictures do not show`);
            await page.evaluate(axe);
            const { violations } = await page.evaluate(() => window.axe.run());
            for (const violation of violations) {
                fault(where, `${violation.id}: ${violation.help}`);
                violation.nodes.slice(0, 3).forEach((node) => console.error(`    ${node.html.slice(0, 160)}\n    ${node.failureSummary}`));
            }
            await page.screenshot({ path: `${pictures}/${basename(report, '.html')}-${width}-${colorScheme}.png`, fullPage: true });
            await context.close();
        }
    }
}
await browser.close();
console.log(`${reports.length} reports on 6 screens each: ${faults} faults`);
process.exit(faults === 0 ? 0 : 1);
