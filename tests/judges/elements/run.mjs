// Looks at the elements and at pictures with a browser: `node elements/run.mjs <address> <browser> <address with keys> <port of pages> <key>`; a line of JSON for each
// check on standard output, as page/run.mjs writes them. Standard input holds pictures as a list of texts in JSON.
import { text } from "node:stream/consumers";
import { withBrowser } from "../page/browser.mjs";
import * as hosts from "./hosts.mjs";
import * as pictures from "./pictures.mjs";

const [address, executable, keyedAddress, port, key] = process.argv.slice(2);
const drawn = JSON.parse(await text(process.stdin));

await withBrowser(executable, async browser => {
  for (const [check, run] of Object.entries({ ...hosts, ...pictures })) {
    const began = performance.now();
    const failure = await run({ browser, address, drawn, keyed: { address: keyedAddress, port: Number(port), key } }).then(() => null, error => `${error.stack}`);
    process.stdout.write(`${JSON.stringify({ check, failure, milliseconds: Math.round(performance.now() - began) })}\n`);
  }
});
