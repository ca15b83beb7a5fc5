// How long a deed takes until it is drawn, in the real browser: the median of twenty. Printed, and never a test.
import { does, serve, tab } from "./served.mjs";

const median = (times) => times.sort((a, b) => a - b)[Math.floor(times.length / 2)];

/** From a press to the frame that shows what came of it, milliseconds. */
const pressed = (page, value) => page.evaluate((value) => new Promise((done) => {
  const began = performance.now();
  const watch = new MutationObserver(() => {
    watch.disconnect();
    requestAnimationFrame(() => setTimeout(() => done(performance.now() - began), 0));
  });
  watch.observe(document.body, { childList: true });
  document.querySelector(`button[name=press][value="${value}"]`).click();
}), value);

export const speed = async () => {
  for (const parts of [9, 300]) {
    const served = await serve(String(parts));
    const first = [];
    const page = await tab(served.address);
    const home = new URL("/", served.address).href;
    await does(page, () => page.locator("button[name=press][value^='open:']").click());
    for (let times = 0; times < 20; times += 1) {
      const began = performance.now();
      await page.goto(home, { waitUntil: "domcontentloaded" });
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
      first.push(performance.now() - began);
    }
    const there = [], back = [];
    for (let times = 0; times < 20; times += 1) {
      there.push(await pressed(page, "free-parts"));
      back.push(await pressed(page, "overview"));
    }
    // The map, folded and unfolded again: the largest drawing there is.
    const unfolded = [], folded = [];
    await does(page, () => page.locator("button[name=press][value=forecast]").first().click());
    await does(page, () => page.locator("button[name=press][value=map]").first().click());
    const unfolds = await page.locator("button[name=press][value=unfold-all]").count();
    for (let times = 0; unfolds && times < 20; times += 1) {
      unfolded.push(await pressed(page, "unfold-all"));
      folded.push(await pressed(page, "fold-again"));
    }
    if (folded.length) console.log(`${parts} parts: the map folded to fit ${median(folded).toFixed(0)} ms, with nothing folded ${median(unfolded).toFixed(0)} ms`);
    console.log(`${parts} parts: the whole page ${median(first).toFixed(0)} ms; a deed until it is drawn: list of parts ${median(there).toFixed(0)} ms, whole job ${median(back).toFixed(0)} ms (medians of 20)`);
    await page.context().close();
    await served.end();
  }
};
