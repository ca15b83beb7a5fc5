// Draws invented photos of parts in a real browser: node photos.mjs FOLDER
import { chromium } from 'playwright-core';
import { writeFileSync } from 'node:fs';

const folder = process.argv[2];
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
const page = await browser.newPage({ viewport: { width: 960, height: 720 } });
for (const [name, ground] of [['S1-before', '#5b5142'], ['S1-after', '#6a6254'], ['S1-label', '#4e4a40'], ['A1-before', '#5d5f58'],
    ['O2-before', '#a79f8d'], ['O2-after', '#b5ac98'], ['G1-place', '#2f2c27'], ['O4-before', '#8f8876']]) {
    await page.setContent(`<body style="margin:0;background:${ground};display:grid;place-items:center;height:720px">
        <p style="background:#d2cec3;padding:80px;font:60px monospace">${name}</p>`);
    writeFileSync(`${folder}/${name}.jpg`, await page.screenshot({ type: 'jpeg', quality: 85 }));
}
await browser.close();
