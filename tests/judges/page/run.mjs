// Looks at the page with a browser: `node page/run.mjs <address> <browser> <address with keys> <key>`; a line of JSON for each check on standard output.
//
// Line: { "check": "…", "failure": null | "…", "milliseconds": … }
import { withBrowser } from "./browser.mjs";
import * as asking from "./asking.mjs";
import * as document from "./document.mjs";
import * as keys from "./keys.mjs";
import * as looking from "./looking.mjs";
import * as typing from "./typing.mjs";

const [address, executable, keyedAddress, key] = process.argv.slice(2);
const checks = Object.entries({ ...asking, ...document, ...keys, ...looking, ...typing });

await withBrowser(executable, async browser => {
  for (const [check, run] of checks) {
    const began = performance.now();
    const failure = await run({ browser, address, keyed: { address: keyedAddress, key } }).then(() => null, error => `${error.stack}`);
    process.stdout.write(`${JSON.stringify({ check, failure, milliseconds: Math.round(performance.now() - began) })}\n`);
  }
});
