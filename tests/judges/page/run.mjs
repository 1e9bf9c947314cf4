// Looks at the page with a browser: `node page/run.mjs <address> <browser>`; a line of JSON for each check on standard output.
//
// Line: { "check": "…", "failure": null | "…", "milliseconds": … }
import { withBrowser } from "./browser.mjs";
import * as asking from "./asking.mjs";
import * as looking from "./looking.mjs";
import * as typing from "./typing.mjs";

const [address, executable] = process.argv.slice(2);
const checks = Object.entries({ ...asking, ...looking, ...typing });

await withBrowser(executable, async browser => {
  for (const [check, run] of checks) {
    const began = performance.now();
    const failure = await run({ browser, address }).then(() => null, error => `${error.stack}`);
    process.stdout.write(`${JSON.stringify({ check, failure, milliseconds: Math.round(performance.now() - began) })}\n`);
  }
});
