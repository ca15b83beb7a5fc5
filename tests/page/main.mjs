// The page in a real browser: node tests/page/main.mjs [journeys] [screens] [speed] [pictures]
import { browser } from "./served.mjs";
import { journeys } from "./journeys.mjs";
import { known, screens, walked } from "./screens.mjs";
import { speed } from "./speed.mjs";
import { pictures as forReadme } from "./pictures.mjs";
import { LOOKS } from "./looked.mjs";

const wanted = process.argv.slice(2);
const pictures = process.env.LEGWORK_PICTURES || "target/page-pictures";
const all = wanted.length === 0;
let failed = false;
try {
  const looksAtAll = all || wanted.includes("screens");
  // The guide walks while hands go their ways.
  const folders = Object.fromEntries(["english", "right-to-left"].map((one) => [one, looksAtAll && walked(one)]));
  if (all || wanted.includes("journeys")) await journeys();
  if (looksAtAll) {
    const turned = [{ name: "right to left", set: async () => {} }];
    for (const [language, looks] of [["english", LOOKS], ["right-to-left", turned]]) {
      const { seen, wrong } = await screens(await folders[language], `${pictures}/${language}`, looks);
      console.log(`${seen.length} screens in ${language}, each in ${looks.length} looks: ${wrong.length} things wrong; pictures in ${pictures}/${language}`);
      for (const line of wrong) console.error(line.slice(0, 400));
      const missing = known().filter((name) => !seen.includes(name));
      if (missing.length) console.error(`not looked at: ${missing.join(" ")}`);
      if (wrong.length || missing.length) failed = true;
    }
  }
  if (wanted.includes("speed")) await speed();
  if (wanted.includes("pictures")) await forReadme("docs");
} catch (error) {
  console.error(error.stack);
  failed = true;
}
await browser.close();
process.exit(failed ? 1 : 0);
