// The page, served by the example `serve`, and the browser that looks at it.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

export const ROOT = new URL("../..", import.meta.url).pathname;
/** Where cargo builds. */
export const target = process.env.CARGO_TARGET_DIR || join(ROOT, "target");

/** An example of the page, built. `LEGWORK_PROFILE`: the folder of another profile. */
export const built = (example) => join(target, process.env.LEGWORK_PROFILE || "debug", "examples", example);

export const browser = await chromium.launch({ executablePath: process.env.CHROMIUM || "/usr/bin/chromium", args: ["--no-sandbox"] });

/** Serves a home folder of its own until `end`. `fill`: `-`, `whole` or a number of parts. */
export const serve = async (fill = "-", language = "english") => {
  const home = mkdtempSync(join(tmpdir(), "legwork-page-test-"));
  const server = spawn(built("serve"), [home, fill, language], { stdio: ["pipe", "pipe", "inherit"] });
  const address = await new Promise((known, not) => {
    let said = "";
    server.stdout.on("data", (piece) => { said += piece; if (said.includes("\n")) known(said.trim()); });
    server.on("exit", (code) => not(new Error(`the server ended with ${code}`)));
  });
  const end = async () => {
    const ended = new Promise((done) => server.on("exit", done));
    server.stdin.end();
    await ended;
    rmSync(home, { recursive: true, force: true });
  };
  return { address, home, end };
};

/** A tab on nothing yet; whatever goes wrong in its script is an error of the test. */
export const fresh = async (options = {}) => {
  const context = await browser.newContext({ reducedMotion: "reduce", viewport: { width: 390, height: 844 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  page.faults = [];
  page.deeds = 0;
  const isDeed = (request) => request.url().endsWith("/deed");
  page.on("request", (request) => { if (isDeed(request)) page.deeds += 1; });
  for (const end of ["requestfinished", "requestfailed"]) page.on(end, (request) => { if (isDeed(request)) page.deeds -= 1; });
  page.on("pageerror", (error) => page.faults.push(String(error)));
  page.on("console", (said) => { if (said.type() === "error" && !/409/.test(said.text())) page.faults.push(said.text()); });
  return page;
};

/** A tab on an address. */
export const tab = async (address, options = {}) => {
  const page = await fresh(options);
  await page.goto(address);
  return page;
};

/** What the screen is called. */
export const name = (page) => page.evaluate(() => document.body.dataset.name);

/** Which place it is, and which drawing of it. */
const mark = (page) => page.evaluate(() => document.querySelector("[name=ticket]")?.value);

/** Waits until another drawing of the screen stands there than `before`, and nothing goes on beside. */
export const drawn = async (page, before) => {
  await page.waitForFunction((before) => {
    const ticket = document.querySelector("[name=ticket]")?.value;
    return ticket && ticket !== before && document.body.dataset.working === undefined;
  }, before, { timeout: 120_000 });
};

/** Waits until no deed is under way, and none waits behind one: what was typed is kept by a deed of its own. */
const rests = async (page) => {
  for (let seen = null, now = ""; seen !== now || page.deeds > 0; now = await mark(page)) {
    seen = now;
    await page.waitForTimeout(40);
  }
};

/** Does something that draws the screen anew. */
export const does = async (page, what) => {
  const before = await mark(page);
  await what();
  await drawn(page, before);
  await rests(page);
  await drawn(page, before);
};

/** Fails with words. */
export const insist = (holds, words) => { if (!holds) throw new Error(words); };
