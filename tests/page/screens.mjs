// Looks at every screen of a home with one of everything, in every light and width, and takes pictures. Which screens there
// are says the guide's own walk (the example `every_screen`), which fails where one is missing.
import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { existsSync, mkdirSync, readdirSync, rmSync } from "node:fs";
import { basename, join } from "node:path";
import { ROOT, built, fresh, insist } from "./served.mjs";
import { LOOKS, clipped, plain, violations } from "./looked.mjs";

/** So many screens are looked at at a time: one for each of two cores. */
const AT_A_TIME = 2;
/** Where the screens seem to come from. Nothing is served there. */
const HERE = "http://127.0.0.1:1/";

const LOOK = { "look.css": "look/look.css", "page.css": "core/page/assets/page.css", "page.js": "core/page/assets/page.js" };

/** A tab to which the documents of a folder are handed as if they were served. */
const tab = async (folder) => {
  const page = await fresh();
  await page.route("**/*", (route) => {
    const path = new URL(route.request().url()).pathname.slice(1);
    const file = LOOK[path] ? join(ROOT, LOOK[path]) : join(folder, path);
    return existsSync(file) ? route.fulfill({ path: file }) : route.fulfill({ status: 404 });
  });
  return page;
};

/** As much as there is, without a dock that lies over it. */
const picture = async (page, path) => {
  const { width } = page.viewportSize();
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: Math.min(Math.max(height, 640), 8000) });
  await page.screenshot({ path });
};

/** Has the guide walk through every screen; the folder in which they lie then. */
export const walked = async (language) => {
  const folder = join(ROOT, "target/page-screens", language);
  rmSync(folder, { recursive: true, force: true });
  await promisify(execFile)(built("every_screen"), [folder, language]);
  return folder;
};

/** Looks at every screen of a folder; `wanted` are the looks. What is wrong, and which screens there were. */
export const screens = async (folder, pictures, wanted = LOOKS) => {
  rmSync(pictures, { recursive: true, force: true });
  mkdirSync(pictures, { recursive: true });
  const names = readdirSync(folder).filter((file) => file.endsWith(".html")).map((file) => basename(file, ".html"));
  const left = [...names];
  const wrong = [];
  const one = async () => {
    const page = await tab(folder);
    for (let name = left.shift(); name; name = left.shift()) {
      await page.goto(`${HERE}${name}.html`);
      insist((await page.title()) !== "", `${name} has no title`);
      for (const look of wanted) {
        await look.set(page);
        for (const line of [...(await violations(page)), ...(await clipped(page))]) wrong.push(`${name}, ${look.name}: ${line}`);
        await picture(page, join(pictures, `${name}-${look.name.replace(" %", "").replaceAll(" ", "-")}.png`));
        await plain(page);
      }
    }
    insist(page.faults.length === 0, `the page's script said: ${page.faults.join("\n")}`);
    await page.context().close();
  };
  await Promise.all(Array.from({ length: AT_A_TIME }, one));
  return { seen: names, wrong };
};

/** The names of the guide's own snapshots, a screen each. */
export const known = () => readdirSync(join(ROOT, "core/guide/tests/all/snapshots/screens")).map((file) => basename(file, ".snap"));
