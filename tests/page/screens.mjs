// Goes through every screen of a home with one of everything, looks at each in every light and width, and takes pictures.
import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { does, insist, name, serve, tab } from "./served.mjs";
import { LOOKS, clipped, plain, violations } from "./looked.mjs";

// Presses that do something wherever they stand; all others only lead on.
const DOES = new Set(["again", "delete", "done", "could-not", "long-work-stop", "finish", "keep", "keep-note", "later", "make", "mend-with-file",
  "put-back", "same", "save", "stop", "take", "unassign", "undo", "unsure", "work-out", "bring-back", "add", "new", "part", "mend", "copy", "rename", "aside", "at", "back", "add-band", "settle", "replace"]);
const does_something = (key) => DOES.has(key.split(/[ :]/)[0]) || key.startsWith("file-") || DOES.has(key);
const DEEPEST = 7;

/** Every way on of the screen that only leads on: the keys of its rows and presses. */
const ways = (page) => page.evaluate(() => [...document.querySelectorAll("button[name=press]:not(.hide):not(:disabled):not(.confirm button)")].map((one) => one.value));

/** Goes a way from the first screen, by the keys that were pressed. */
const go = async (page, address, way) => {
  await page.goto(address);
  await page.waitForFunction(() => document.body.dataset.working === undefined && document.querySelector("[name=ticket]"));
  // Back to the list of surveys, wherever one was.
  for (let tries = 0; tries < 4 && (await name(page)) !== "surveys"; tries += 1) {
    for (const key of ["overview", "surveys", "out"]) {
      const press = page.locator(`button[name=press][value="${key}"]`).first();
      if (await press.count()) await does(page, () => press.evaluate((it) => it.click()));
    }
    if ((await name(page)) !== "surveys" && (await page.locator("#back").count())) await does(page, () => page.locator("#back").click());
  }
  for (const key of way) {
    const press = page.locator(`button[name=press][value=${JSON.stringify(key)}]`).first();
    if (!(await press.count())) return false;
    await does(page, () => press.evaluate((it) => it.click()));
  }
  return true;
};

export const screens = async (pictures, language = "english", wanted = LOOKS) => {
  const served = await serve("whole", language);
  const page = await tab(served.address);
  rmSync(pictures, { recursive: true, force: true });
  mkdirSync(pictures, { recursive: true });
  const seen = new Map();
  const queue = [[]];
  const tried = new Set();
  const wrong = [];
  const home = new URL("/", served.address).href;
  while (queue.length) {
    const way = queue.shift();
    if (!(await go(page, home, way))) continue;
    const at = await name(page);
    if (seen.has(at)) continue;
    seen.set(at, way);
    for (const look of wanted) {
      await look.set(page);
      for (const line of await violations(page)) wrong.push(`${at}, ${look.name}: ${line}`);
      for (const line of await clipped(page)) wrong.push(`${at}, ${look.name}: ${line}`);
      if (["light", "dark", "wide", "right to left"].includes(look.name)) {
        await page.screenshot({ path: join(pictures, `${at}-${look.name.replaceAll(" ", "-")}.png`), fullPage: look.name !== "wide" });
      }
      await plain(page);
    }
    if (way.length < DEEPEST) {
      for (const key of await ways(page)) {
        // Of many rows that lead to the same kind of screen the first two are enough.
        const kind = `${at} ${key.split(":")[0]}`;
        const times = [...tried].filter((one) => one.startsWith(`${kind}#`)).length;
        if (does_something(key) || times >= 2) continue;
        tried.add(`${kind}#${times}`);
        queue.push([...way, key]);
      }
    }
  }
  insist(page.faults.length === 0, `the page's script said: ${page.faults.join("\n")}`);
  await page.context().close();
  await served.end();
  return { seen: [...seen.keys()], wrong };
};
