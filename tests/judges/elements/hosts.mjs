// The elements in pages of others.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { withPage } from "../page/browser.mjs";

const sample = "elements/sample.html";
const sampleLadder = "evenstep-ladder:not(.other)";
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export const The_sample_shows_every_element = given => onSample(given, {}, async page => {
  assert.equal(await page.locator("svg").count(), 2);
  assert.match(await insideOf(page, "evenstep-ladder.other"), /Vergrößerungsleiter/);
  assert.match(await insideOf(page, sampleLadder), /Capstan 152/);
});

/** The policy of the sample lets no script in, so the auditor comes through the browser's own door, with the policy in force. */
export const Nothing_is_found_against_them = async given => {
  for (const colorScheme of ["light", "dark"]) {
    await onSample(given, { colorScheme }, async page => {
      const client = await page.context().newCDPSession(page);
      const { frameTree } = await client.send("Page.getFrameTree");
      const { executionContextId } = await client.send("Page.createIsolatedWorld", { frameId: frameTree.frame.id });
      await client.send("Runtime.evaluate", { contextId: executionContextId, expression: axe });
      const { result } = await client.send("Runtime.evaluate", { contextId: executionContextId, awaitPromise: true, returnByValue: true, expression: "axe.run().then(found => found.violations.map(one => `${one.id}: ${one.nodes[0].html}`))" });
      assert.deepEqual(result.value, [], colorScheme);
    });
  }
};

export const A_change_of_attributes_is_asked_once = given => onSample(given, {}, async page => {
  const asked = [];
  page.on("request", request => asked.push(request.postDataJSON()));
  await page.locator(sampleLadder).evaluate(element => {
    element.setAttribute("owned", "kelpstone-5-5 kelpstone-22-8");
    element.setAttribute("age", "70");
  });
  await page.waitForFunction(() => document.querySelectorAll("#told").length && document.querySelector("#told").textContent.split("evenstep-ladder: ready").length === 4);
  assert.deepEqual(asked.map(({ owned, observer }) => [owned.length, observer.age]), [[2, 70]]);
});

export const A_refusal_says_what_to_change = given => onSample(given, {}, async page => {
  await page.locator(sampleLadder).evaluate(element => element.setAttribute("age", "-1"));
  await page.locator(`${sampleLadder} [role=alert]`).waitFor();
  assert.match(await page.locator(`${sampleLadder} [role=alert]`).textContent(), /\/observer\/age: -1 was given; it must be a number from 5 to 110/);
});

export const A_page_sets_its_own_colours = given => onSample(given, { colorScheme: "light" }, async page => {
  const paper = () => page.evaluate(name => getComputedStyle(document.querySelector(name).shadowRoot.querySelector(".evenstep-paper")).fill, "evenstep-ladder.other");
  assert.equal(await paper(), "rgb(16, 20, 38)");
});

/** What a picture reads and writes stays text. */
export const Names_are_shown_as_text = given => onSample(given, {}, async page => {
  const name = "<img src=x onerror=alert(1)> & ]]> \"quoted\"";
  await page.locator(sampleLadder).evaluate((element, name) => { element.request = { telescopes: [{ name, apertureMm: 100, focalLengthMm: 900, focuserBarrel: "1.25in" }] }; }, name);
  await page.waitForFunction(selector => document.querySelector(selector).shadowRoot.querySelector("desc")?.textContent.includes("onerror"), sampleLadder);
  assert.ok((await page.locator(`${sampleLadder} svg > title`).textContent()).includes(name));
  assert.equal(await page.locator(`${sampleLadder} img`).count(), 0);
});

async function onSample(given, options, use) {
  await withPage({ ...given, address: new URL(sample, given.address).href }, options, async page => {
    await page.waitForFunction(() => document.querySelector("#told").textContent.split(";").length === 3);
    assert.doesNotMatch(await page.locator("#told").textContent(), /failed/);
    await use(page);
  });
}

const insideOf = (page, selector) => page.evaluate(name => document.querySelector(name).shadowRoot.textContent, selector);
